//! Pictures and sheets: copied, or written to a file that the user chooses.

use std::path::Path;

use eframe::egui::{ColorImage, Context};
use steerloft_sheet::output::{self, Existing, OutputError};
use steerloft_sheet::{Page, png, svg};

use super::Steerloft;
use super::documents::Asked;
use crate::dialogs::FileRequest;
use crate::state::{PrintChoices, Subject};
use crate::ui::messages::Message;

/// Resolution of a single picture, dots per inch.
const RESOLUTION: f64 = 200.0;

impl Steerloft {
    /// Puts a view or a curve on the clipboard as a picture.
    pub(super) fn copy_picture(&mut self, subject: Subject, ctx: &Context) {
        let Some(page) = self.picture(subject) else {
            return;
        };
        match png::pixels(&page, RESOLUTION) {
            Ok(pixels) => ctx.copy_image(ColorImage::from_rgb(pixels.size, &pixels.colours)),
            Err(error) => self.message = Some(Message::not_written(&error.to_string())),
        }
    }

    /// Puts a view or a curve on the clipboard as the text of an SVG document.
    pub(super) fn copy_drawing(&mut self, subject: Subject, ctx: &Context) {
        if let Some(page) = self.picture(subject) {
            ctx.copy_text(svg::document(&page));
        }
    }

    /// The picture, or none with a message why.
    fn picture(&mut self, subject: Subject) -> Option<Page> {
        let page = self.bench.picture(subject);
        if page.is_none() {
            self.message = Some(Message::no_picture());
        }
        page
    }

    /// Asks where a picture is to be saved.
    pub(super) fn ask_where_to_save_picture(
        &mut self,
        subject: Subject,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let what = subject.title().to_lowercase();
        self.ask_where_to_write(Asked::Picture(subject), &what, "png", ctx, window);
    }

    /// Asks where a sheet is to be saved.
    pub(super) fn ask_where_to_save_sheet(
        &mut self,
        choices: PrintChoices,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let what = choices.kind.title().to_lowercase();
        let end = choices.format.extension();
        self.ask_where_to_write(Asked::Sheet(choices), &what, end, ctx, window);
    }

    fn ask_where_to_write(
        &mut self,
        asked: Asked,
        what: &str,
        end: &str,
        ctx: &Context,
        window: &eframe::Frame,
    ) {
        let setup = self.bench.document().suggested_file_name();
        let stem = setup.trim_end_matches(".ron");
        let request = FileRequest::SavePage {
            folder: self.folder(),
            name: format!("{stem}-{}.{end}", what.replace(' ', "-")),
        };
        self.ask(asked, request, ctx, window);
    }

    /// Writes a picture to a file; its name decides the format.
    pub(super) fn write_picture(&mut self, subject: Subject, path: &Path) {
        if let Some(page) = self.picture(subject) {
            self.write_pages(&[page], RESOLUTION, path);
        }
    }

    /// Writes a sheet to a file; its name decides the format.
    pub(super) fn write_sheet(&mut self, choices: PrintChoices, path: &Path) {
        match self.bench.sheet(&choices, self.view.curves.kinds()) {
            Ok(pages) => self.write_pages(&pages, choices.resolution, path),
            Err(error) => self.message = Some(Message::not_written(&error.to_string())),
        }
    }

    fn write_pages(&mut self, pages: &[Page], resolution: f64, path: &Path) {
        // The dialog has asked before it gave the name of a file that is there.
        let written = output::write(pages, path, resolution, Existing::Replace);
        self.message = written
            .err()
            .map(|error: OutputError| Message::not_written(&error.to_string()));
    }
}
