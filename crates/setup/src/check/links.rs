//! Checks of the links of twin cranks.

use steerloft_solver::frame::{Point, Vector};

use super::drive::{check_axis, check_carried};
use super::geometry::{about_axis, apart, distance_from_axis, leads};
use super::values::position;
use super::{Fault, Path};
use crate::car::{Crank, DrivenCrank, InnerBallsOn, Position};
use crate::limits::MAX_OFF_LINK;
use crate::values::short;

const BESIDE: &str = "place its balls so that the link passes beside that axis";

/// Two cranks, the left one first, with the link between them.
pub(super) struct CrossLink {
    pub(super) cranks: [Crank; 2],
    pub(super) balls: [Position; 2],
    pub(super) driven: DrivenCrank,
}

impl CrossLink {
    /// The crank that the drag link turns.
    pub(super) fn driven_crank(&self) -> Crank {
        match self.driven {
            DrivenCrank::Left => self.cranks[0],
            DrivenCrank::Right => self.cranks[1],
        }
    }

    /// Checks that cranks and link make a mechanism.
    pub(super) fn check(&self, at: &Path) -> Result<(), Fault> {
        check_axis(&at.field("crank_left"), &self.cranks[0])?;
        check_axis(&at.field("crank_right"), &self.cranks[1])?;
        let words = "this ball of the cross link lies on the axis of the crank that carries it";
        let fields = ["cross_left", "cross_right"].map(|field| at.field(field));
        for (field, (ball, crank)) in fields.iter().zip(self.balls.iter().zip(&self.cranks)) {
            check_carried(field, *ball, crank, words)?;
        }
        let [left, right] = self.balls.map(|ball| ball.point());
        let along = right - left;
        apart(
            &fields[1],
            along.norm(),
            "the two balls of the cross link coincide",
        )?;
        let turned = match self.driven {
            DrivenCrank::Left => 1,
            DrivenCrank::Right => 0,
        };
        leads(
            &fields[turned],
            &along,
            &circling(&self.balls[turned], &self.cranks[turned]),
            "the cross link points straight at the axis of the crank that it should turn",
            BESIDE,
        )
    }

    /// Checks the inner balls on what carries them.
    pub(super) fn check_inner(
        &self,
        at: &Path,
        carried_by: InnerBallsOn,
        inner: [(&'static str, Position); 2],
    ) -> Result<(), Fault> {
        for ((field, ball), crank) in inner.into_iter().zip(&self.cranks) {
            let at = at.field(field);
            match carried_by {
                InnerBallsOn::Cranks => {
                    let words =
                        "this inner tie-rod ball lies on the axis of the crank that carries it";
                    check_carried(&at, ball, crank, words)?;
                }
                InnerBallsOn::CrossLink => {
                    position(&at, ball)?;
                    self.check_on_link(&at, &ball.point())?;
                }
            }
        }
        Ok(())
    }

    fn check_on_link(&self, at: &Path, ball: &Point) -> Result<(), Fault> {
        let [left, right] = self.balls.map(|ball| ball.point());
        let beside = beside_link(ball, &left, &right);
        if beside <= 0.0 {
            return Ok(());
        }
        Err(Fault::new(
            at,
            format!(
                "this inner tie-rod ball lies {} mm beside the cross link that carries it",
                short(beside)
            ),
            "place it on the straight line between the cross link's two balls, about which the link may spin",
        ))
    }
}

/// The servo arm and the link that turns a crank, its ball on the servo arm first.
pub(super) struct DragLink {
    pub(super) servo_arm: Crank,
    pub(super) crank: Crank,
    pub(super) balls: [Position; 2],
}

impl DragLink {
    /// Checks that servo arm, link and crank make a mechanism.
    pub(super) fn check(&self, at: &Path) -> Result<(), Fault> {
        check_axis(&at.field("servo_arm"), &self.servo_arm)?;
        let words = "this ball of the drag link lies on the axis of the servo arm";
        let [on_servo, on_crank] = &self.balls;
        check_carried(&at.field("drag_servo"), *on_servo, &self.servo_arm, words)?;
        let words = "this ball of the drag link lies on the axis of the crank that carries it";
        let at = at.field("drag_crank");
        check_carried(&at, *on_crank, &self.crank, words)?;
        let along = on_crank.point() - on_servo.point();
        apart(&at, along.norm(), "the two balls of the drag link coincide")?;
        leads(
            &at,
            &along,
            &circling(on_crank, &self.crank),
            "the drag link points straight at the axis of the driven crank and cannot turn it",
            BESIDE,
        )
    }
}

/// How a ball runs on its crank, mm per rad.
fn circling(ball: &Position, crank: &Crank) -> Vector {
    about_axis(
        &ball.point(),
        &crank.axis_point.point(),
        &crank.axis_direction.vector(),
    )
}

/// How far a ball lies beside the cross link that carries it, mm; 0 where that is no more than rounding leaves.
pub(super) fn beside_link(ball: &Point, from: &Point, to: &Point) -> f64 {
    let beside = distance_from_axis(ball, from, to);
    if beside <= MAX_OFF_LINK * (to - from).norm() {
        0.0
    } else {
        beside
    }
}
