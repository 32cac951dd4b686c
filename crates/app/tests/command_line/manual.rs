//! What a system is told about the program.

#![allow(clippy::unwrap_used, clippy::expect_used)]

use crate::common::{good, refused};
use clap::CommandFactory;
use steerloft::cli::Arguments;

#[test]
fn the_manual_page_names_every_command_and_option() {
    let folder = tempfile::tempdir().unwrap();
    let page = good(folder.path(), &["manual"]);
    assert!(page.contains(".TH steerloft 1"), "{page}");
    let page = page.replace("\\-", "-");
    for command in Arguments::command().get_subcommands() {
        let heading = format!(".SH {}\n", command.get_name().to_uppercase());
        assert!(page.contains(&heading), "{heading}");
        for option in command.get_arguments().filter_map(clap::Arg::get_long) {
            assert!(page.contains(&format!("--{option}")), "{option}");
        }
    }
    for section in ["EXIT STATUS", "FILES", "CAUTIONS"] {
        assert!(page.contains(section), "{section}");
    }
}

#[test]
fn shells_are_told_every_command() {
    let folder = tempfile::tempdir().unwrap();
    for shell in ["bash", "zsh", "fish", "elvish", "powershell"] {
        let script = good(folder.path(), &["completions", shell]);
        for command in Arguments::command().get_subcommands() {
            assert!(
                script.contains(command.get_name()),
                "{shell}: {}",
                command.get_name()
            );
        }
    }
    refused(folder.path(), &["completions", "sh"], 2);
}

#[test]
fn bash_takes_its_script() {
    let folder = tempfile::tempdir().unwrap();
    let script = good(folder.path(), &["completions", "bash"]);
    let file = folder.path().join("steerloft.bash");
    std::fs::write(&file, script).unwrap();
    let bash = std::process::Command::new("bash")
        .args(["--norc", "-c", ". ./steerloft.bash && COMP_WORDS=(steerloft sw) COMP_CWORD=1 && _steerloft steerloft sw steerloft && echo \"${COMPREPLY[@]}\""])
        .current_dir(folder.path())
        .output();
    match bash {
        Ok(output) => assert_eq!(String::from_utf8_lossy(&output.stdout).trim(), "sweep"),
        Err(error) => println!("bash is not installed; this test is skipped: {error}"),
    }
}
