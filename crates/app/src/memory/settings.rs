//! Settings: what the window looked like, and the files used last.
//!
//! A field that this version does not know is passed over; one that the file does not give, or gives in a way that this version
//! does not understand, is as on the first start.

use std::fs;
use std::path::{Path, PathBuf};

use ron::ser::PrettyConfig;
use serde::{Deserialize, Serialize};

use crate::lenient::or_default;
use crate::state::{CurveLayout, Preferences, Switches};

/// Most files remembered.
pub const MOST_RECENT: usize = 9;

/// Most bytes of a settings file.
const MOST_BYTES: u64 = 100_000;

/// Everything that is remembered beside unsaved work.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Where the window was.
    #[serde(deserialize_with = "or_default")]
    pub window: Option<WindowPlace>,
    /// The theme, in the words of its command.
    #[serde(deserialize_with = "or_default")]
    pub theme: Option<String>,
    /// Files used last, the last one first.
    #[serde(deserialize_with = "or_default")]
    pub recent: Vec<String>,
    /// Units, scale, and whether the hints have been seen.
    #[serde(deserialize_with = "or_default")]
    pub preferences: Preferences,
    /// How the window was laid out.
    #[serde(deserialize_with = "or_default")]
    pub layout: Layout,
}

/// Place and size of the window, in points at full scale.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct WindowPlace {
    /// Left upper corner of its frame, where the desktop tells it.
    pub position: Option<(f32, f32)>,
    /// Size of its contents.
    pub size: (f32, f32),
    /// Whether it filled the screen.
    pub maximized: bool,
}

/// What was shown, and how wide.
#[derive(Debug, Clone, PartialEq, Default, Serialize, Deserialize)]
#[serde(default)]
pub struct Layout {
    /// What the column on the right showed, in the words of its command.
    #[serde(deserialize_with = "or_default")]
    pub column: Option<String>,
    /// The drawer that was open, in the words of its command.
    #[serde(deserialize_with = "or_default")]
    pub drawer: Option<String>,
    /// Height of the open drawer, points.
    #[serde(deserialize_with = "or_default")]
    pub drawer_height: Option<f32>,
    /// Which curves were shown, and how.
    #[serde(deserialize_with = "or_default")]
    pub curves: CurveLayout,
    /// What the views showed.
    #[serde(deserialize_with = "or_default")]
    pub switches: Switches,
    /// Width of the panel on the left, points.
    #[serde(deserialize_with = "or_default")]
    pub adjustments_width: Option<f32>,
    /// Width of the column on the right, points.
    #[serde(deserialize_with = "or_default")]
    pub results_width: Option<f32>,
}

impl Settings {
    /// Reads the file. A damaged one is set aside, and what is to be said about that comes with the settings of a first start.
    #[must_use]
    pub fn read(path: &Path) -> (Self, Option<String>) {
        let known_small = fs::metadata(path).is_ok_and(|metadata| metadata.len() <= MOST_BYTES);
        if !path.exists() {
            return (Self::default(), None);
        }
        let read = fs::read_to_string(path)
            .ok()
            .filter(|_| known_small)
            .and_then(|text| ron::Options::default().from_str::<Self>(&text).ok());
        match read {
            Some(settings) => (settings, None),
            None => (Self::default(), Some(set_aside(path))),
        }
    }

    /// The text of the file.
    #[must_use]
    pub fn to_text(&self) -> String {
        let pretty = PrettyConfig::new().new_line("\n");
        let text = ron::Options::default().to_string_pretty(self, pretty);
        text.map_or_else(|_| "()\n".to_owned(), |text| format!("{text}\n"))
    }

    /// Notes that a file was used. One whose name is no text is not remembered.
    pub fn used(&mut self, path: &Path) {
        let Some(text) = std::path::absolute(path)
            .ok()
            .and_then(|path| path.to_str().map(str::to_owned))
        else {
            return;
        };
        self.recent.retain(|other| *other != text);
        self.recent.insert(0, text);
        self.recent.truncate(MOST_RECENT);
    }
}

/// Sets a damaged file aside and says so.
fn set_aside(path: &Path) -> String {
    let aside: PathBuf = path.with_file_name("settings-damaged.ron");
    match fs::rename(path, &aside) {
        Ok(()) => format!(
            "The settings could not be read and are as on the first start. The damaged file is now {}.",
            aside.display()
        ),
        Err(error) => format!(
            "The settings in {} could not be read ({error}) and are as on the first start.",
            path.display()
        ),
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used)]

    use super::*;
    use crate::state::CurveKind;

    #[test]
    fn settings_read_as_they_were_written() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.ron");
        assert_eq!(Settings::read(&path), (Settings::default(), None));
        let mut settings = Settings {
            window: Some(WindowPlace {
                position: Some((-3.0, 40.5)),
                size: (1280.0, 800.0),
                maximized: true,
            }),
            theme: Some("Dark".to_owned()),
            ..Settings::default()
        };
        settings.layout.curves.toggle(CurveKind::RollSteer);
        settings.layout.curves.held_input = Some(7.5);
        settings.used(Path::new("/tmp/a.ron"));
        fs::write(&path, settings.to_text()).unwrap();
        assert_eq!(Settings::read(&path), (settings, None));
    }

    #[test]
    fn what_is_unknown_is_passed_over_and_what_is_missing_is_as_at_first() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.ron");
        fs::write(
            &path,
            "(colour_of_the_sky: Blue(3), layout: (switches: (side: true), hats: [1]))",
        )
        .unwrap();
        let (settings, notice) = Settings::read(&path);
        assert_eq!(notice, None);
        assert!(settings.layout.switches.side);
        assert_eq!(settings.theme, None);
    }

    #[test]
    fn what_a_newer_version_means_otherwise_does_not_cost_the_rest() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.ron");
        let text = r#"(
            window: Some((size: "large")),
            theme: Some("Dark"),
            recent: ["/tmp/a.ron"],
            preferences: (units: Furlongs, scale: Automatic(3), hints_seen: true),
            layout: (
                column: Some(Both("Curves", "Figures")),
                curves: (
                    kinds: ["roll-steer", "curve-of-tomorrow"],
                    height: Golden(ratio: 1.618),
                    two_columns: true,
                ),
                drawer_height: Some(310.0),
            ),
        )"#;
        fs::write(&path, text).unwrap();
        let (settings, notice) = Settings::read(&path);
        assert_eq!(notice, None);
        assert!(path.exists());
        assert_eq!(settings.window, None);
        assert_eq!(settings.theme.as_deref(), Some("Dark"));
        assert_eq!(settings.recent, ["/tmp/a.ron"]);
        assert!(settings.preferences.hints_seen);
        assert_eq!(settings.preferences.units, Preferences::default().units);
        assert_eq!(settings.preferences.scale, Preferences::LEAST_SCALE);
        let layout = &settings.layout;
        assert_eq!(layout.column, None);
        assert_eq!(layout.drawer_height, Some(310.0));
        assert_eq!(layout.curves.kinds(), [CurveKind::RollSteer]);
        assert_eq!(layout.curves.height, CurveLayout::default().height);
        assert!(layout.curves.two_columns);
    }

    #[test]
    fn a_damaged_file_is_set_aside() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("settings.ron");
        for bytes in [&b"(theme: 3"[..], &[0xff, 0x00], &vec![b' '; 100_001]] {
            fs::write(&path, bytes).unwrap();
            let (settings, notice) = Settings::read(&path);
            assert_eq!(settings, Settings::default());
            assert!(notice.unwrap().contains("settings-damaged.ron"));
            assert!(!path.exists());
            assert_eq!(
                fs::read(path.with_file_name("settings-damaged.ron")).unwrap(),
                bytes
            );
        }
    }

    #[test]
    fn the_file_used_last_comes_first_and_once() {
        let mut settings = Settings::default();
        for number in 0..20 {
            settings.used(Path::new(&format!("/tmp/{number}.ron")));
        }
        settings.used(Path::new("/tmp/15.ron"));
        assert_eq!(settings.recent.len(), MOST_RECENT);
        assert_eq!(settings.recent[0], "/tmp/15.ron");
        assert_eq!(settings.recent[1], "/tmp/19.ron");
        assert_eq!(
            settings
                .recent
                .iter()
                .filter(|path| *path == "/tmp/15.ron")
                .count(),
            1
        );
    }
}
