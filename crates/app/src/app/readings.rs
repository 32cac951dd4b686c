//! Gauge readings: read from files and written to them.

use std::path::Path;

use eframe::egui::Context;
use steerloft_setup::file;

use super::Steerloft;
use super::documents::Asked;
use crate::dialogs::FileRequest;
use crate::ui::messages::Message;
use crate::ui::names;

/// The file name that is suggested.
const NAME: &str = "gauges.readings";

impl Steerloft {
    pub(super) fn ask_which_readings(&mut self, ctx: &Context, window: &eframe::Frame) {
        let folder = self.folder();
        self.ask(
            Asked::OpenReadings,
            FileRequest::OpenReadings { folder },
            ctx,
            window,
        );
    }

    pub(super) fn ask_where_to_save_readings(&mut self, ctx: &Context, window: &eframe::Frame) {
        let request = FileRequest::SaveReadings {
            folder: self.folder(),
            name: NAME.to_owned(),
        };
        self.ask(Asked::SaveReadings, request, ctx, window);
    }

    /// Takes the readings of a file in the place of those typed.
    pub(super) fn read_readings(&mut self, path: &Path) {
        let units = self.view.preferences.units;
        match file::read_readings(path) {
            Ok(readings) => {
                let fitting = &mut self.view.drawers.fitting;
                fitting.take_readings(&readings, self.bench.setup(), units);
                self.message = None;
            }
            Err(error) => self.message = Some(Message::readings_not_read(&error.to_string())),
        }
    }

    /// Writes the readings as they are typed.
    pub(super) fn write_readings(&mut self, path: &Path) {
        let units = self.view.preferences.units;
        let readings = self
            .view
            .drawers
            .fitting
            .readings(self.bench.setup(), units);
        let written = readings
            .map_err(|why| format!("{}.", names::sentence(&why)))
            .and_then(|readings| {
                file::write_readings(path, &readings).map_err(|error| error.to_string())
            });
        if let Err(why) = written {
            self.message = Some(Message::readings_not_written(&why));
        }
    }
}
