//! The command `fencegust`.

use std::process::ExitCode;

fn main() -> ExitCode {
    fencegust::cli::main()
}
