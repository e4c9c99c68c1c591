//! The program `bearwell`. Everything it does is in the library.

/// Answers are made of many small texts and lists; the allocator of the C library takes a sixth
/// of the time of a call.
#[global_allocator]
static ALLOCATOR: mimalloc::MiMalloc = mimalloc::MiMalloc;

fn main() -> std::process::ExitCode {
    bearwell::command::run()
}
