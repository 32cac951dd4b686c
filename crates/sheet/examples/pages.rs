//! Writes every kind of page of every supplied car into a folder, to be looked at: `pages FOLDER`.

use std::error::Error;
use std::path::{Path, PathBuf};

use steerloft_analysis::curves::CurveKind;
use steerloft_setup::adjustment::{Adjustment, Unit};
use steerloft_setup::layout::layout;
use steerloft_setup::setup::Setup;
use steerloft_setup::supplied::SUPPLIED;
use steerloft_sheet::{
    Page, Paper, SheetRequest, View, ViewPicture, blank_sheet, measuring_form, pdf,
    picture_of_chart, picture_of_view, png, setup_sheet, svg,
};
use steerloft_solver::error::SolveError;
use steerloft_solver::{Assembly, Sides};

fn main() -> Result<(), Box<dyn Error>> {
    let folder = std::env::args_os().nth(1).map(PathBuf::from);
    let folder = folder.ok_or("give the folder to write to")?;
    std::fs::create_dir_all(&folder)?;
    for supplied in SUPPLIED {
        let setup = supplied.setup();
        let name = supplied.file_name.trim_end_matches(".ron");
        let changed = changed(&setup);
        for (suffix, reference, paper) in [
            ("sheet", None, Paper::A4),
            ("compared", Some(&setup), Paper::Letter),
        ] {
            let setup = if reference.is_some() {
                &changed
            } else {
                &setup
            };
            let pages = setup_sheet(&SheetRequest {
                setup,
                reference,
                paper,
                curves: &CurveKind::ALL,
            })?;
            write(&folder, &format!("{name}-{suffix}"), &pages)?;
        }
        write(
            &folder,
            &format!("{name}-blank"),
            &blank_sheet(&setup, Paper::A4)?,
        )?;
        let form = measuring_form(&setup, Paper::A4)?;
        write(&folder, &format!("{name}-form"), &form)?;
        let chart = picture_of_chart(&changed, Some(&setup), CurveKind::InnerOuter)?;
        write(&folder, &format!("{name}-chart"), &[chart])?;
        for view in View::ALL {
            let picture = view_picture(&changed, &setup, view)?;
            write(
                &folder,
                &format!("{name}-{view:?}").to_lowercase(),
                &[picture],
            )?;
        }
    }
    Ok(())
}

/// A view of a setup at half of its steering, with a reference.
fn view_picture(setup: &Setup, reference: &Setup, view: View) -> Result<Page, Box<dyn Error>> {
    let posed = |setup: &Setup| {
        let layout = layout(setup);
        let assembly = Assembly::new(&layout.axle)?;
        let unit = match setup.car.drive.input_unit() {
            Unit::Degrees => 1.0_f64.to_radians(),
            Unit::Millimetres => 1.0,
        };
        let input = 0.5 * setup.car.ranges.input.1 * unit;
        let pose = assembly.pose(input, Sides::both(0.0))?;
        Ok::<_, SolveError>((layout, pose))
    };
    let ((layout, pose), (old_layout, old_pose)) = (posed(setup)?, posed(reference)?);
    Ok(picture_of_view(&ViewPicture {
        setup,
        layout: &layout,
        pose: &pose,
        reference: Some((&old_layout, &old_pose)),
        view,
    }))
}

/// A setup with every third adjustment one step up.
fn changed(setup: &Setup) -> Setup {
    let mut changed = setup.clone();
    for index in (0..setup.car.adjustments.len()).step_by(3) {
        let adjustment: &Adjustment = &setup.car.adjustments[index];
        let value = adjustment.step_from(&setup.value(index), 1);
        // What the adjustment itself offers, it takes.
        let _ = changed.set(index, value);
    }
    "Second run, one step up".clone_into(&mut changed.record.name);
    changed
}

fn write(folder: &Path, name: &str, pages: &[Page]) -> Result<(), Box<dyn Error>> {
    std::fs::write(folder.join(format!("{name}.pdf")), pdf::document(pages)?)?;
    if let Some(first) = pages.first() {
        std::fs::write(folder.join(format!("{name}.svg")), svg::document(first))?;
        std::fs::write(
            folder.join(format!("{name}.png")),
            png::document(first, 110.0)?,
        )?;
    }
    Ok(())
}
