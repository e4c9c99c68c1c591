//! The program `bearwell`. Everything it does is in the library.

fn main() -> std::process::ExitCode {
    bearwell::command::run()
}
