//! Sizes and spacing in screen points.

/// Spacing, sizes and type in one place.
#[derive(Debug)]
pub struct Metrics;

impl Metrics {
    /// Smallest gap: between parts of one control.
    pub const GAP_SMALL: f32 = 4.0;
    /// Gap between controls.
    pub const GAP: f32 = 8.0;
    /// Gap between groups of controls.
    pub const GAP_LARGE: f32 = 14.0;
    /// Margin inside panels.
    pub const MARGIN: i8 = 10;
    /// Corner radius of controls.
    pub const CORNER: u8 = 4;
    /// Height of a control.
    pub const CONTROL_HEIGHT: f32 = 22.0;
    /// Type size of body text.
    pub const TEXT: f32 = 13.5;
    /// Type size of notes, units and axis ticks.
    pub const TEXT_SMALL: f32 = 11.5;
    /// Type size of group headings.
    pub const TEXT_HEADING: f32 = 14.5;
    /// Least width of the window's contents.
    pub const WINDOW_LEAST: [f32; 2] = [900.0, 600.0];
    /// Width of the window when nothing else is asked for.
    pub const WINDOW_DEFAULT: [f32; 2] = [1280.0, 800.0];
    /// Width of a field for exact entry.
    pub const FIELD_WIDTH: f32 = 70.0;
    /// Radius of a handle's ring.
    pub const HANDLE_RADIUS: f32 = 5.0;
    /// Radius within which a handle is hit.
    pub const HANDLE_REACH: f32 = 12.0;
    /// Radius within which a finger takes a handle.
    pub const FINGER_REACH: f32 = 26.0;
    /// Side of a button drawn beside a part.
    pub const PART_BUTTON: f32 = 17.0;
    /// Side of such a button on a touch screen.
    pub const FINGER_BUTTON: f32 = 30.0;
    /// Pointer movement after which a drag is known to be one.
    pub const DRAG_THRESHOLD: f32 = 4.0;
}
