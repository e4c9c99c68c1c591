//! A bounded pool of threads for work that takes long. Knows nothing of requests: full
//! is full, and the caller says so to its client.

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::mpsc::{Receiver, SyncSender, sync_channel};
use std::sync::{Arc, Mutex};
use std::{io, thread};

type Job = Box<dyn FnOnce() + Send>;

/// Threads with a queue of bounded length.
pub struct Pool {
    queue: SyncSender<Job>,
}

/// As much is waiting as is accepted.
#[derive(Debug)]
pub struct Full;

impl Pool {
    /// So many threads, and so many jobs that may wait for one.
    pub fn new(threads: usize, waiting: usize) -> io::Result<Self> {
        let (queue, jobs) = sync_channel::<Job>(waiting);
        let jobs = Arc::new(Mutex::new(jobs));
        for at in 0..threads {
            let jobs = jobs.clone();
            thread::Builder::new()
                .name(format!("calculation-{at}"))
                .spawn(move || work(&jobs))?;
        }
        Ok(Self { queue })
    }

    /// Runs a job as soon as a thread is free.
    pub fn run(&self, job: impl FnOnce() + Send + 'static) -> Result<(), Full> {
        self.queue.try_send(Box::new(job)).map_err(|_| Full)
    }
}

/// Takes jobs until the pool is gone.
fn work(jobs: &Mutex<Receiver<Job>>) {
    loop {
        let job = match jobs.lock() {
            Ok(jobs) => jobs.recv(),
            Err(_) => return,
        };
        let Ok(job) = job else { return };
        // whoever waits for the job sees that its answer never comes
        if catch_unwind(AssertUnwindSafe(job)).is_err() {
            tracing::error!("a job panicked");
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::mpsc::channel;

    #[test]
    fn is_full_when_it_says_so_and_survives_a_panic() {
        let pool = Pool::new(1, 1).unwrap();
        let (started, has_started) = channel();
        let (go, may_go) = channel::<()>();
        let (done, is_done) = channel();
        pool.run(move || {
            started.send(()).unwrap();
            may_go.recv().unwrap();
            panic!("on purpose");
        })
        .unwrap();
        has_started.recv().unwrap();
        pool.run(move || done.send(()).unwrap()).unwrap();
        pool.run(|| ()).expect_err("one runs and one waits");
        go.send(()).unwrap();
        is_done.recv().unwrap();
    }
}
