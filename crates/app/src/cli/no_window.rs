//! Why no window could be opened, in one line, with what to do.

use eframe::Error;

/// What needs no window.
const WITHOUT: &str = "The command line works without one, such as `steerloft report FILE`.";

/// The line about an error of the window library.
pub(super) fn reason(error: &Error) -> String {
    let missing = match error {
        Error::Winit(_) | Error::WinitEventLoop(_) => {
            no_display(|name| std::env::var_os(name).is_some())
        }
        Error::Glutin(_) | Error::NoGlutinConfigs(..) | Error::OpenGL(_) => {
            no_graphics(&error.to_string())
        }
        other => other.to_string(),
    };
    line(&missing)
}

/// The line about a fault of the window library, which is how it takes a missing library of the system.
pub(super) fn fault(fault: &str) -> String {
    line(&format!(
        "a library of the desktop is missing ({fault}); install it (on Debian and Ubuntu: libx11-xcb1, libxcursor1, libxi6, libxkbcommon-x11-0, libegl1)"
    ))
}

fn line(missing: &str) -> String {
    let line = format!("No window: {missing}. {WITHOUT}");
    line.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn no_display(is_set: impl Fn(&str) -> bool) -> String {
    let displays = ["WAYLAND_DISPLAY", "WAYLAND_SOCKET", "DISPLAY"];
    if displays.into_iter().any(is_set) {
        "the display does not answer; start it from a desktop session, or check DISPLAY and WAYLAND_DISPLAY".to_owned()
    } else {
        "there is no display (neither DISPLAY nor WAYLAND_DISPLAY is set); start it from a desktop session".to_owned()
    }
}

fn no_graphics(error: &str) -> String {
    format!(
        "no graphics driver offers OpenGL ({error}); install one (on Debian and Ubuntu: libgl1-mesa-dri and libegl1, which also draw without a graphics card)"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_reason_is_one_line_that_says_what_to_do() {
        for missing in [
            no_display(|_| true),
            no_display(|_| false),
            no_graphics("a\nb"),
        ] {
            let line = line(&missing);
            assert!(!line.contains('\n'));
            assert!(
                line.contains("start it") || line.contains("install"),
                "{line}"
            );
        }
        assert!(no_display(|_| false).contains("neither"));
        assert!(no_display(|name| name == "DISPLAY").contains("does not answer"));
        assert!(!fault("x\ny").contains('\n'));
    }
}
