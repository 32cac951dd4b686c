//! Setup files: one self-contained RON text, read with exact complaints, written so that a failure leaves the
//! old file whole.

mod document;
mod error;
mod explain;
mod format_1;
mod locate;
mod read;
mod readings;
mod scan;
mod stamp;
mod version;
mod write;

pub use error::FileError;
pub(crate) use error::plain_reason;
pub use read::{read, read_stamped, read_text};
pub use readings::{read_readings, read_readings_text, readings_to_text, write_readings};
pub use stamp::{Stamp, Standing};
pub use version::NEWEST_FORMAT;
pub use write::{to_text, write, write_text};
