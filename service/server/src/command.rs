//! The command line: what `bearwell` is told to do. Each command writes to what it is
//! given and returns how the process ends.

use std::io::{self, Read, Write};
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::Duration;

use bearwell_engine::limits::BODY_BYTES;
use clap::{Args, Parser, Subcommand};
use serde_json::Value;

use crate::app::{Application, Settings};
use crate::examples;
use crate::problem::{self, Problem};
use crate::selfcheck;
use crate::service::Service;
use crate::table::{Ask, CALCULATIONS, CSV, Entry, JSON};

/// Calculations of helical pile foundations over HTTP.
#[derive(Debug, Parser)]
#[command(name = "bearwell", version, args_conflicts_with_subcommands = true)]
struct Line {
    #[command(subcommand)]
    command: Option<Command>,
    #[command(flatten)]
    serve: Serve,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Answer over HTTP until told to stop (the default).
    Serve(Serve),
    /// Answer one request; the same bytes as over HTTP. Ends with 0 when answered, 2 when
    /// refused with the problem on standard output, 1 when called wrongly.
    Calc(Calc),
    /// Print the API document.
    Openapi,
    /// Calculate every built-in example and compare it with its approved answer. Ends
    /// with 1 when one differs.
    Selfcheck,
    /// Tell two invented houses from soil to plan.
    Demo,
}

#[derive(Debug, Args)]
struct Serve {
    /// Address and port; port 0 takes a free one.
    #[arg(long, env = "BEARWELL_LISTEN", default_value = "127.0.0.1:8080")]
    listen: String,
    /// Threads that serve connections; as many as there are cores when left out.
    #[arg(long, env = "BEARWELL_WORKERS", value_parser = at_least_one)]
    workers: Option<usize>,
    /// Longest time a calculation may take, in seconds.
    #[arg(long, env = "BEARWELL_DEADLINE", default_value = "10", value_parser = seconds)]
    deadline: Duration,
    /// Long calculations that run at once; as many as there are cores when left out.
    #[arg(long, env = "BEARWELL_CALCULATIONS", value_parser = at_least_one)]
    calculations: Option<usize>,
    /// Long calculations that may wait; more are refused with 503.
    #[arg(long, env = "BEARWELL_WAITING", default_value = "16")]
    waiting: usize,
    /// Seconds between saying "not ready" and taking no more connections at the end.
    #[arg(long, env = "BEARWELL_DRAIN", default_value = "0", value_parser = seconds)]
    drain: Duration,
}

#[derive(Debug, Args)]
struct Calc {
    /// The calculation, such as `helix-capacity`.
    noun: String,
    /// File with the request; `-` reads standard input.
    file: PathBuf,
    /// Media type of the request. When left out: `text/csv` for a file whose name ends in
    /// `.csv`, else `application/json`.
    #[arg(long)]
    content_type: Option<String>,
    /// Media type of the answer.
    #[arg(long, default_value = JSON)]
    accept: String,
    /// Which sheet or table, where the media type has several.
    #[arg(long)]
    form: Option<String>,
}

fn at_least_one(text: &str) -> Result<usize, String> {
    match text.parse() {
        Ok(0) => Err("at least 1".to_owned()),
        Ok(number) => Ok(number),
        Err(_) => Err("not a number".to_owned()),
    }
}

fn seconds(text: &str) -> Result<Duration, String> {
    let seconds: f64 = text.parse().map_err(|_| "not a number".to_owned())?;
    Duration::try_from_secs_f64(seconds)
        .ok()
        .filter(|time| time.as_secs() <= 3600)
        .ok_or_else(|| "0 to 3600 seconds".to_owned())
}

/// Runs what the command line asks for.
pub fn run() -> ExitCode {
    let line = match Line::try_parse() {
        Ok(line) => line,
        Err(error) => {
            let _ = error.print();
            // wrong use is 1; asking for help is no mistake
            return ExitCode::from(u8::from(error.use_stderr()));
        }
    };
    let done = match line.command.unwrap_or(Command::Serve(line.serve)) {
        Command::Serve(serve) => start(serve),
        Command::Calc(calc) => answer(&calc),
        Command::Openapi => print(Service::standard().document().as_bytes()),
        Command::Selfcheck => selfcheck::run(&mut io::stdout().lock()),
        Command::Demo => crate::demo::run(&mut io::stdout().lock()).map(|()| ExitCode::SUCCESS),
    };
    done.unwrap_or_else(|error| {
        eprintln!("bearwell: {error}");
        ExitCode::FAILURE
    })
}

fn print(bytes: &[u8]) -> io::Result<ExitCode> {
    io::stdout().lock().write_all(bytes)?;
    Ok(ExitCode::SUCCESS)
}

fn start(serve: Serve) -> io::Result<ExitCode> {
    log_to_stderr();
    let usual = Settings::default();
    let settings = Settings {
        listen: serve.listen,
        workers: serve.workers.unwrap_or(usual.workers),
        deadline: serve.deadline,
        calculations: serve.calculations.unwrap_or(usual.calculations),
        waiting: serve.waiting,
        drain: serve.drain,
    };
    actix_web::rt::System::new().block_on(async {
        let app = Application::build(&settings)
            .map_err(|e| io::Error::other(format!("cannot listen on {}: {e}", settings.listen)))?;
        greet(&app)?;
        app.run_until_stopped().await
    })?;
    Ok(ExitCode::SUCCESS)
}

fn log_to_stderr() {
    use tracing_subscriber::EnvFilter;
    let filter = EnvFilter::try_from_default_env().unwrap_or_else(|_| EnvFilter::new("info"));
    tracing_subscriber::fmt()
        .json()
        .flatten_event(true)
        .with_current_span(true)
        .with_span_list(false)
        .with_writer(io::stderr)
        .with_env_filter(filter)
        .init();
}

/// Says where it listens, with a call that can be pasted.
fn greet(app: &Application) -> io::Result<()> {
    let base = format!("http://{}", app.address());
    let mut out = io::stdout().lock();
    writeln!(out, "Bearwell {} listens on {base}", crate::VERSION)?;
    let noun = "torque-capacity";
    let example = examples::request(noun, "linnet")
        .and_then(|body| serde_json::from_slice::<Value>(body).ok());
    if let Some(example) = example {
        let body = example.to_string().replace('\'', "'\\''");
        writeln!(
            out,
            "\nTry it:\n\ncurl -s {base}/v1/{noun} -H 'content-type: application/json' -d '{body}'\n"
        )?;
    }
    writeln!(out, "API document: {base}/openapi.json")?;
    #[cfg(feature = "docs-ui")]
    writeln!(out, "To read and try: {base}/docs/")?;
    out.flush()
}

fn answer(calc: &Calc) -> io::Result<ExitCode> {
    let Some(entry) = CALCULATIONS.iter().find(|e| e.name == calc.noun) else {
        let known: Vec<&str> = CALCULATIONS.iter().map(|e| e.name).collect();
        let hint = crate::read::hint(&calc.noun, &known);
        let text = format!("no calculation is called `{}`; {hint}", calc.noun);
        return Err(io::Error::other(text));
    };
    let body =
        read(&calc.file).map_err(|e| io::Error::other(format!("{}: {e}", calc.file.display())))?;
    let given = calc.content_type.as_deref();
    let given = given.unwrap_or_else(|| content_type(&calc.file));
    // the schemas of all calculations take longer than most answers
    let service = Service::new(std::slice::from_ref(entry));
    match calc_as(
        &service,
        entry,
        given,
        &body,
        &calc.accept,
        calc.form.as_deref(),
    ) {
        Ok(bytes) => print(&bytes),
        Err(problem) => {
            print(&problem.to_bytes())?;
            Ok(ExitCode::from(2))
        }
    }
}

fn read(file: &Path) -> io::Result<Vec<u8>> {
    if file != Path::new("-") {
        return std::fs::read(file);
    }
    let mut body = Vec::new();
    io::stdin().lock().read_to_end(&mut body)?;
    Ok(body)
}

/// The media type that the name of a file stands for.
fn content_type(file: &Path) -> &'static str {
    let ending = file.extension().unwrap_or_default();
    if ending.eq_ignore_ascii_case("csv") {
        CSV
    } else {
        JSON
    }
}

/// Answers one request in JSON; the bytes are those that HTTP would send.
pub fn calc(
    service: &Service,
    entry: &Entry,
    body: &[u8],
    accept: &str,
    form: Option<&str>,
) -> Result<Vec<u8>, Problem> {
    calc_as(service, entry, JSON, body, accept, form)
}

/// Answers one request in a media type; the bytes are those that HTTP would send.
pub fn calc_as(
    service: &Service,
    entry: &Entry,
    content_type: &str,
    body: &[u8],
    accept: &str,
    form: Option<&str>,
) -> Result<Vec<u8>, Problem> {
    let media = crate::http::choose(accept, &entry.media())?;
    let read = crate::http::media_of(content_type, &entry.reads())?;
    if body.len() > BODY_BYTES {
        let detail = format!("at most {BODY_BYTES} bytes");
        return Err(Problem::new(&problem::BODY_TOO_LARGE, detail));
    }
    let reply = service.answer(
        entry,
        &Ask {
            body,
            csv: entry.csv_of(read),
            schemas: &service.schemas,
            media,
            form,
            stop: None,
        },
    )?;
    Ok(reply.into_bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_name_of_a_file_says_what_it_holds() {
        for (name, media) in [
            ("log.csv", CSV),
            ("a.b/LOG.CSV", CSV),
            ("log.json", JSON),
            ("csv", JSON),
            ("-", JSON),
        ] {
            assert_eq!(content_type(Path::new(name)), media, "{name}");
        }
    }

    #[test]
    fn what_is_not_read_over_http_is_not_read_here() {
        let service = Service::standard();
        let refused = |noun: &str, media: &str| {
            let entry = service.entry(noun).expect("an entry");
            let problem = calc_as(service, entry, media, b"", JSON, None).expect_err(media);
            (problem.status, problem.detail)
        };
        assert_eq!(
            refused("torque-capacity", CSV),
            (
                415,
                "`text/csv` is not read; read here: application/json".to_owned()
            )
        );
        assert_eq!(
            refused("load-test", "text/tab-separated-values").1,
            "`text/tab-separated-values` is not read; read here: application/json, text/csv"
        );
    }
}
