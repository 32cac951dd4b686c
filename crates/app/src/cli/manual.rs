//! What a system is told about the program: the manual page, and how shells complete its commands.

use std::io::{Result, Write};
use std::process::ExitCode;

use clap::CommandFactory;
use clap_complete::Shell;
use clap_mangen::Man;
use clap_mangen::roff::{Roff, roman};

use super::Arguments;

/// Sections of the manual page beside what the arguments say of themselves.
const SECTIONS: [(&str, &[&str]); 3] = [
    (
        "EXIT STATUS",
        &[
            "0: done, and every setup is good.",
            "1: a setup has a problem, or something could not be done; the error output says what and what to do next.",
            "2: wrong use.",
        ],
    ),
    (
        "FILES",
        &[
            "A setup file is one text that holds a car, its adjustments, the values chosen and the record. Lengths are in millimetres and angles in degrees.",
        ],
    ),
    (
        "CAUTIONS",
        &[
            "Take the wheels off the ground and the power off before you work on linkages; a servo can trap fingers. Check full lock by hand for binding before you power the steering.",
            "Karts and anything that carries a person: have the design and the work checked by someone qualified; follow local rules and scrutineering.",
            "Figures are geometry, not a promise of handling.",
        ],
    ),
];

/// Prints the manual page.
pub(super) fn page(out: &mut impl Write) -> Result<ExitCode> {
    let mut command = Arguments::command();
    command.build();
    // No date, so that the same program always gives the same page.
    let page = Man::new(command.clone()).manual("Steerloft");
    page.render_title(out)?;
    page.render_name_section(out)?;
    page.render_synopsis_section(out)?;
    page.render_description_section(out)?;
    page.render_options_section(out)?;
    for one in command
        .get_subcommands()
        .filter(|one| one.get_name() != "help")
    {
        let mut heading = Roff::new();
        heading.control("SH", [one.get_name().to_uppercase().as_str()]);
        heading.to_writer(out)?;
        out.write_all(subsections(one)?.as_bytes())?;
    }
    let mut roff = Roff::new();
    for (title, paragraphs) in SECTIONS {
        roff.control("SH", [title]);
        for paragraph in paragraphs {
            roff.control("PP", []);
            roff.text([roman(*paragraph)]);
        }
    }
    roff.to_writer(out)?;
    Ok(ExitCode::SUCCESS)
}

/// What a command says of itself, in the sections of a page of its own, as parts of a section.
fn subsections(command: &clap::Command) -> Result<String> {
    let page = Man::new(command.clone());
    let mut text = Vec::new();
    page.render_description_section(&mut text)?;
    page.render_synopsis_section(&mut text)?;
    page.render_options_section(&mut text)?;
    Ok(String::from_utf8_lossy(&text).replace(".SH ", ".SS "))
}

/// Prints the completions of a shell.
pub(super) fn completions(shell: Shell, out: &mut impl Write) -> Result<ExitCode> {
    let mut text = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "steerloft", &mut text);
    out.write_all(&text)?;
    Ok(ExitCode::SUCCESS)
}
