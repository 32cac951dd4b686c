//! Bounds on what a document may hold, each stated once.
//!
//! They are far beyond any car that has such a linkage, from a 1:12 model to a small formula car; what lies
//! outside is a slip of the pen or a damaged file.

/// Largest size of a setup file, bytes.
pub const MAX_FILE_BYTES: u64 = 1_000_000;

/// Deepest nesting of brackets in a setup file.
pub const MAX_NESTING: usize = 64;

/// Largest coordinate, length or displacement, mm.
pub const MAX_LENGTH: f64 = 10_000.0;

/// Smallest length that counts as one: shorter axes and levers have no direction, mm.
pub const MIN_LENGTH: f64 = 0.001;

/// Largest camber, either way, degrees.
pub const MAX_CAMBER: f64 = 45.0;

/// Largest pitch and roll of the chassis, either way, degrees.
pub const MAX_TILT: f64 = 25.0;

/// Most that the steering axis leans from upright, degrees.
pub const MAX_KINGPIN_LEAN: f64 = 45.0;

/// Most that a strut's slide line leans from the steering axis, degrees.
pub const MAX_SLIDE_LEAN: f64 = 45.0;

/// Most that an inner ball may lie beside the cross link that carries it, as a share of the link's length: what
/// rounded decimals leave.
pub const MAX_OFF_LINK: f64 = 0.9e-3;

/// Largest toe of one wheel, either way, degrees.
pub const MAX_TOE: f64 = 45.0;

/// Largest angle of a steering input or of a turn, either way, degrees.
pub const MAX_ANGLE: f64 = 180.0;

/// Most adjustments of a car.
pub const MAX_ADJUSTMENTS: usize = 64;

/// Most options of a choice.
pub const MAX_OPTIONS: usize = 64;

/// Most effects of one adjustment or option.
pub const MAX_EFFECTS: usize = 32;

/// Most steps of a slide.
pub const MAX_STEPS: f64 = 10_000.0;

/// Most sizes of spacer of a stack.
pub const MAX_SPACER_SIZES: usize = 16;

/// Most spacers of one size.
pub const MAX_SPACERS: u32 = 50;

/// Most different totals a stack may reach.
pub const MAX_TOTALS: usize = 1_000;

/// Thicknesses and totals of stacks are whole multiples of this, mm.
pub const SPACER_GRAIN: f64 = 0.001;

/// Longest name, characters.
pub const MAX_NAME: usize = 80;

/// Longest free text, characters.
pub const MAX_TEXT: usize = 20_000;

/// Most runs of a record.
pub const MAX_RUNS: usize = 2_000;

/// Most teeth of a servo's spline.
pub const MAX_TEETH: u32 = 100;

/// Fewest teeth of a servo's spline.
pub const MIN_TEETH: u32 = 4;

/// Most obstacles of a car.
pub const MAX_OBSTACLES: usize = 32;

/// Most stocks of a car.
pub const MAX_STOCKS: usize = 16;

/// Most spacers of one size in a stock.
pub const MAX_STOCKED: u32 = 1_000;

/// Most places of the car in which one stack is built.
pub const MAX_PLACES: u32 = 16;

/// Largest force on the front wheels, N.
pub const MAX_LOAD: f64 = 20_000.0;

/// Largest coefficient of friction.
pub const MAX_FRICTION: f64 = 5.0;

/// Largest torque or moment, N mm.
pub const MAX_TORQUE: f64 = 1_000_000.0;

/// Longest servo pulse, microseconds.
pub const MAX_PULSE: f64 = 10_000.0;

/// Largest misalignment of a ball joint, degrees.
pub const MAX_MISALIGNMENT: f64 = 60.0;

/// Largest build error of a length or coordinate, mm.
pub const MAX_LENGTH_ERROR: f64 = 50.0;

/// Largest build error of an angle, degrees.
pub const MAX_ANGLE_ERROR: f64 = 10.0;

/// Most readings of one kind that a file holds.
pub const MAX_READINGS: usize = 500;

/// Most dimensions that readings can be asked to find.
pub const MAX_UNCERTAIN: usize = 64;

/// Longest lap, s.
pub const MAX_LAP: f64 = 36_000.0;

/// Most laps of a run.
pub const MAX_LAPS: u32 = 100_000;

/// Most setup files of a folder that a library reads.
pub const MAX_LIBRARY_FILES: usize = 2_000;

/// Most names of a folder that a library looks at.
pub const MAX_LIBRARY_ENTRIES: usize = 20_000;
