//! Renders the window in several states to PNG files, through the same widgets as the program.
//!
//! `cargo run -p steerloft --example screenshots -- FOLDER [PART-OF-NAME]`

mod scenes;

use std::path::Path;
use std::process::ExitCode;

use eframe::egui::Theme;
use egui_kittest::Harness;
use steerloft::app::Steerloft;
use steerloft::dialogs::{ScriptedAnswers, ScriptedDialogs};
use steerloft::state::Document;
use steerloft::theme::ThemeChoice;
use steerloft_setup::supplied::SUPPLIED;

use scenes::{App, Scene};

fn main() -> ExitCode {
    let mut arguments = std::env::args_os().skip(1);
    let Some(folder) = arguments.next() else {
        println!("Say where to write the pictures: screenshots FOLDER [PART-OF-NAME]");
        return ExitCode::from(2);
    };
    let part = arguments.next().unwrap_or_default();
    match render_all(Path::new(&folder), &part.to_string_lossy()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(problem) => {
            println!("{problem}");
            ExitCode::FAILURE
        }
    }
}

fn render_all(folder: &Path, part: &str) -> Result<(), String> {
    std::fs::create_dir_all(folder).map_err(|error| error.to_string())?;
    for scene in scenes::all()
        .iter()
        .filter(|scene| scene.name.contains(part))
    {
        let path = folder.join(format!("{}.png", scene.name));
        render(scene, &path).map_err(|error| format!("{}: {error}", path.display()))?;
        println!("{}", path.display());
    }
    Ok(())
}

fn render(scene: &Scene, path: &Path) -> Result<(), String> {
    let (car, theme) = (scene.car, scene.theme);
    let mut app: App = Harness::builder()
        .with_size(scene.size)
        .with_theme(if theme == ThemeChoice::Dark {
            Theme::Dark
        } else {
            Theme::Light
        })
        .with_max_steps(20)
        .with_render_cursor(false)
        .wgpu()
        .build_eframe(move |context| {
            let dialogs = Box::new(ScriptedDialogs::new(ScriptedAnswers::default()));
            let document = Document::unnamed(SUPPLIED[car].setup());
            Steerloft::new(&context.egui_ctx, document, dialogs, theme)
        });
    app.run();
    (scene.arrange)(&mut app);
    app.run();
    let picture = app.render()?;
    picture.save(path).map_err(|error| error.to_string())
}
