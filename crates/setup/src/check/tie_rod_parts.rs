//! Checks of the tie rod's parts and its ball joints.

use super::values::{coordinate, direction, length, number};
use super::{Fault, Path};
use crate::car::{BallJoints, Thread, TieRodParts};
use crate::limits::{MAX_LENGTH, MAX_MISALIGNMENT, MIN_LENGTH};
use crate::values::{SAME_VALUE, short};

/// Checks the parts.
pub(super) fn check(at: &Path, tie_rod: &TieRodParts) -> Result<(), Fault> {
    number(
        &at.field("cup_length"),
        tie_rod.cup_length,
        0.0,
        MAX_LENGTH,
        "mm",
    )?;
    length(&at.field("shortest"), tie_rod.shortest)?;
    coordinate(&at.field("longest"), tie_rod.longest)?;
    if tie_rod.longest <= tie_rod.shortest {
        return Err(Fault::new(
            &at.field("longest"),
            "the longest tie rod is not longer than the shortest",
            "give a length greater than `shortest`",
        ));
    }
    match &tie_rod.thread {
        // `Some` holds the thread as its only element.
        Some(thread) => check_thread(at, &at.field("thread").item(0), thread, tie_rod),
        None => Ok(()),
    }
}

fn check_thread(
    parts_at: &Path,
    at: &Path,
    thread: &Thread,
    tie_rod: &TieRodParts,
) -> Result<(), Fault> {
    length(&at.field("pitch"), thread.pitch)?;
    length(&at.field("rod_length"), thread.rod_length)?;
    number(
        &at.field("thread_length"),
        thread.thread_length,
        MIN_LENGTH,
        thread.rod_length,
        "mm",
    )?;
    number(
        &at.field("least_engagement"),
        thread.least_engagement,
        0.0,
        thread.thread_length,
        "mm",
    )?;
    let cups = 2.0 * tie_rod.cup_length;
    let longest = thread.rod_length + cups - 2.0 * thread.least_engagement;
    let shortest = thread.rod_length + cups - 2.0 * thread.thread_length;
    if tie_rod.longest > longest + SAME_VALUE {
        return Err(Fault::new(
            &parts_at.field("longest"),
            "at this length the thread no longer sits deep enough in the cups",
            format!(
                "the thread and its cups allow {} to {} mm",
                short(shortest),
                short(longest)
            ),
        ));
    }
    if tie_rod.shortest < shortest - SAME_VALUE {
        return Err(Fault::new(
            &parts_at.field("shortest"),
            "at this length the cups would have to go on farther than the thread",
            format!(
                "the thread and its cups allow {} to {} mm",
                short(shortest),
                short(longest)
            ),
        ));
    }
    Ok(())
}

/// Checks the ball joints.
pub(super) fn check_joints(at: &Path, joints: &BallJoints) -> Result<(), Fault> {
    direction(&at.field("outer_stud"), joints.outer_stud)?;
    if let Some(stud) = joints.outer_stud_right {
        direction(&at.field("outer_stud_right").item(0), stud)?;
    }
    direction(&at.field("inner_stud"), joints.inner_stud)?;
    if let Some(stud) = joints.inner_stud_right {
        direction(&at.field("inner_stud_right").item(0), stud)?;
    }
    number(
        &at.field("most"),
        joints.most,
        0.1,
        MAX_MISALIGNMENT,
        "degrees",
    )
}
