//! The running service: settings, the bound port, and an orderly end.

use std::net::{SocketAddr, TcpListener};
use std::sync::atomic::{AtomicBool, AtomicU64, Ordering};
use std::time::{Duration, SystemTime, UNIX_EPOCH};
use std::{io, thread};

use actix_web::dev::{Server, ServerHandle};
use actix_web::middleware::from_fn;
use actix_web::web::Data;
use actix_web::{App, HttpServer};
use tokio::sync::watch;

use crate::http::{self, State};
use crate::pool::Pool;
use crate::service::Service;

/// How the service runs. No setting changes an answer.
#[derive(Debug, Clone)]
pub struct Settings {
    /// Address and port; port 0 takes a free one.
    pub listen: String,
    /// Threads that serve connections.
    pub workers: usize,
    /// Longest time a calculation may take.
    pub deadline: Duration,
    /// Long calculations that run at once.
    pub calculations: usize,
    /// Long calculations that may wait.
    pub waiting: usize,
    /// Time between saying "not ready" and taking no more connections.
    pub drain: Duration,
}

impl Default for Settings {
    fn default() -> Self {
        let cores = thread::available_parallelism().map_or(1, usize::from);
        Self {
            listen: "127.0.0.1:8080".to_owned(),
            workers: cores,
            deadline: Duration::from_secs(10),
            calculations: cores,
            waiting: 16,
            drain: Duration::ZERO,
        }
    }
}

/// The service with its port bound.
pub struct Application {
    server: Server,
    address: SocketAddr,
    state: Data<State>,
    stop: Stop,
}

/// Tells a running service to end.
#[derive(Debug, Clone)]
pub struct Stop(watch::Sender<bool>);

impl Stop {
    /// Ends the service in good order.
    pub fn stop(&self) {
        self.0.send_replace(true);
    }
}

impl Application {
    /// The service as it is shipped.
    pub fn build(settings: &Settings) -> io::Result<Self> {
        Self::build_with(settings, Service::standard())
    }

    /// A service of other calculations.
    pub fn build_with(settings: &Settings, service: &'static Service) -> io::Result<Self> {
        let listener = TcpListener::bind(&settings.listen)?;
        let address = listener.local_addr()?;
        let began = SystemTime::now().duration_since(UNIX_EPOCH);
        let state = Data::new(State {
            service,
            pool: Pool::new(settings.calculations, settings.waiting)?,
            deadline: settings.deadline,
            ready: AtomicBool::new(true),
            requests: AtomicU64::new(0),
            run: format!("{:x}", began.map_or(0, |t| t.as_millis())),
        });
        let stop = Stop(watch::Sender::new(false));
        let server = HttpServer::new({
            let state = state.clone();
            move || {
                App::new()
                    .wrap(from_fn(http::log))
                    .app_data(state.clone())
                    .configure(|config| http::routes(config, &state))
            }
        })
        .workers(settings.workers)
        // longer than clients and balancers commonly keep an idle connection, so that it
        // is they who close it and no request is sent into a connection that just ended
        .keep_alive(Duration::from_secs(75))
        // a client that is gone ends the work for it
        .h1_allow_half_closed(false)
        .shutdown_signal(ending(state.clone(), stop.clone(), settings.drain))
        .shutdown_timeout(settings.deadline.as_secs() + 5)
        .listen(listener)?
        .run();
        Ok(Self {
            server,
            address,
            state,
            stop,
        })
    }

    /// The address it listens on.
    pub fn address(&self) -> SocketAddr {
        self.address
    }

    /// The port it listens on.
    pub fn port(&self) -> u16 {
        self.address.port()
    }

    /// What ends it from outside.
    pub fn stop_handle(&self) -> Stop {
        self.stop.clone()
    }

    /// Serves until it is told to stop; requests in flight are finished.
    pub async fn run_until_stopped(self) -> io::Result<()> {
        let result = self.server.await;
        self.state.ready.store(false, Ordering::Relaxed);
        result
    }
}

/// Resolves when no more connections are to be taken: some time after readiness has
/// flipped, which happens at a signal or when told to stop.
async fn ending(state: Data<State>, stop: Stop, drain: Duration) {
    let mut told = stop.0.subscribe();
    tokio::select! {
        _ = told.wait_for(|stop| *stop) => {}
        () = signal() => {}
    }
    state.ready.store(false, Ordering::Relaxed);
    tracing::info!("shutting down");
    tokio::time::sleep(drain).await;
}

/// SIGTERM or ctrl-c.
async fn signal() {
    let interrupt = tokio::signal::ctrl_c();
    #[cfg(unix)]
    {
        use tokio::signal::unix::{SignalKind, signal};
        if let Ok(mut terminate) = signal(SignalKind::terminate()) {
            tokio::select! {
                _ = interrupt => {}
                _ = terminate.recv() => {}
            }
            return;
        }
    }
    let _ = interrupt.await;
}

/// A service in a thread of its own, for tests and for programs that embed it.
pub struct Running {
    /// The address it listens on.
    pub address: SocketAddr,
    stop: Stop,
    handle: ServerHandle,
    thread: Option<thread::JoinHandle<io::Result<()>>>,
}

impl Running {
    /// Starts a service and returns once its port is bound.
    pub fn start(settings: Settings, service: &'static Service) -> io::Result<Self> {
        let (send, receive) = std::sync::mpsc::channel();
        let thread = thread::spawn(move || {
            actix_web::rt::System::new().block_on(async move {
                let app = match Application::build_with(&settings, service) {
                    Ok(app) => app,
                    Err(error) => {
                        let _ = send.send(Err(error));
                        return Ok(());
                    }
                };
                let _ = send.send(Ok((app.address(), app.stop_handle(), app.server.handle())));
                app.run_until_stopped().await
            })
        });
        let lost = || io::Error::other("the service did not start");
        let (address, stop, handle) = receive.recv().map_err(|_| lost())??;
        Ok(Self {
            address,
            stop,
            handle,
            thread: Some(thread),
        })
    }

    /// Tells it to end in good order and does not wait.
    pub fn stop(&self) {
        self.stop.stop();
    }
}

impl Drop for Running {
    /// Ends at once; call [`Running::stop`] first where requests are in flight.
    fn drop(&mut self) {
        drop(self.handle.stop(false));
        if let Some(thread) = self.thread.take() {
            let _ = thread.join();
        }
    }
}
