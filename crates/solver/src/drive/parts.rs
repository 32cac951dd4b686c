//! Levers and links of a posed drive, for drawing.

use super::{Crank, Drive, InnerBallsOn, TwinCrank};
use crate::frame::{Point, Side, Sides, Vector};
use crate::pose::{DriveJoints, DrivePose, Lever, Link};

impl Drive {
    /// Arms and cranks of this drive at one of its poses; the one that the servo or column turns comes first.
    pub fn levers(&self, pose: &DrivePose) -> impl Iterator<Item = Lever> + use<> {
        let balls = pose.rod_inner;
        let levers = match (self, pose.joints) {
            (Self::SwingArm(arm), _) => {
                let inner = [Some(balls.left), Some(balls.right), None];
                [lever(arm.axis_point, arm.axis_direction, inner), None, None]
            }
            (
                Self::TwinCrank(drive),
                DriveJoints::TwinCrank {
                    drag_servo,
                    drag_crank,
                    cross,
                },
            ) => {
                let servo = crank_lever(&drive.servo, [Some(drag_servo), None, None]);
                let crank = |side: Side| drive.crank(side, &cross, &balls, drag_crank);
                [servo, crank(Side::Left), crank(Side::Right)]
            }
            (Self::TwinCrank(_), DriveJoints::None) | (Self::Slider(_), _) => [None, None, None],
        };
        levers.into_iter().flatten()
    }

    /// Links of this drive other than the tie rods: drag link and cross link, or the rack between its balls.
    pub fn links(&self, pose: &DrivePose) -> impl Iterator<Item = Link> + use<> {
        let links = match (self, pose.joints) {
            (Self::Slider(_), _) => {
                let Sides { left, right } = pose.rod_inner;
                [
                    Some(Link {
                        from: left,
                        to: right,
                    }),
                    None,
                ]
            }
            (
                Self::TwinCrank(_),
                DriveJoints::TwinCrank {
                    drag_servo,
                    drag_crank,
                    cross,
                },
            ) => [
                Some(Link {
                    from: drag_servo,
                    to: drag_crank,
                }),
                Some(Link {
                    from: cross.left,
                    to: cross.right,
                }),
            ],
            (Self::SwingArm(_), _) | (Self::TwinCrank(_), DriveJoints::None) => [None, None],
        };
        links.into_iter().flatten()
    }
}

impl TwinCrank {
    fn crank(
        &self,
        side: Side,
        cross: &Sides<Point>,
        inner: &Sides<Point>,
        drag: Point,
    ) -> Option<Lever> {
        let balls = [
            Some(*cross.get(side)),
            (self.inner_on == InnerBallsOn::Cranks).then_some(*inner.get(side)),
            (side == self.driven).then_some(drag),
        ];
        crank_lever(self.cranks.get(side), balls)
    }
}

fn crank_lever(crank: &Crank, balls: [Option<Point>; 3]) -> Option<Lever> {
    lever(crank.axis_point, crank.axis_direction, balls)
}

fn lever(axis_point: Point, direction: Vector, balls: [Option<Point>; 3]) -> Option<Lever> {
    Some(Lever {
        axis_point,
        axis: direction.try_normalize(f64::MIN_POSITIVE)?,
        balls,
    })
}
