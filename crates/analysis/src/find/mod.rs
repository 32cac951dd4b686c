//! Which parts give what is wanted: a search over the values that adjustments can take.
//!
//! A [`Search`] says what is wanted ([`Want`]), what may change ([`Free`]), and what parts there are ([`Stock`]).
//! [`Search::run`] tries every combination and answers with [`Findings`]: the closest ones, what each changes, the
//! trade-off between closeness and number of changes, and for a want that nothing meets the nearest there is and what
//! stands in the way.
//!
//! How it is done. Combinations are the leaves of a tree with one level for each free adjustment, in the order in which
//! the car's effects apply, so that everything above a level is laid out once for all that lies below. Whole branches are
//! left out only for reasons that hold for every leaf below: more changes than allowed, more spacers than there are. A
//! leaf is measured exactly ([`Gauge`]): its figures are those of the full evaluation, found with as few poses as
//! they need. Work is shared out between threads by branches.

mod change;
mod finding;
mod free;
mod gauge;
mod keep;
mod limit;
mod measure;
mod refine;
mod search;
mod space;
mod stock;
mod tree;
mod want;

pub use change::Change;
pub use finding::{Finding, Findings, WantResult};
pub use free::{Free, RangeError};
pub use gauge::Gauge;
pub use limit::{Limit, Unmet};
pub use measure::{Measure, Wheel};
pub use search::{Progress, Search};
pub use space::SearchError;
pub use stock::{Stock, StockSpacer};
pub use want::{Target, Want};
