//! Reading and writing on the disk.
#![allow(clippy::unwrap_used, clippy::expect_used, missing_docs)]

mod common;

use std::fs;
use std::path::Path;

use common::{base_car, choose};
use steerloft_setup::file::{FileError, read, to_text, write};
use steerloft_setup::setup::{Chosen, Setup};

fn changed_car() -> Setup {
    let mut setup = base_car();
    choose(&mut setup, "Servo station", Chosen::Slide(2.0));
    setup.record.notes = String::from("Grüße \"vom\" Ring\nzweite Zeile \\ Ende");
    setup
}

/// Names of what is in a folder.
fn listing(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> = entries
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    names.sort();
    names
}

#[test]
fn what_is_written_reads_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("a setup.ron");
    write(&path, &base_car()).unwrap();
    assert_eq!(read(&path).unwrap(), base_car());
    write(&path, &changed_car()).unwrap();
    assert_eq!(read(&path).unwrap(), changed_car());
    assert_eq!(listing(folder.path()), ["a setup.ron"]);
}

#[test]
fn messages_name_the_file() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("broken.ron");
    fs::write(&path, "Setup(\n    format: 9,\n)").unwrap();
    let message = read(&path).unwrap_err().to_string();
    assert_eq!(
        message,
        format!(
            "{}:2:13: this file has format 9, which is newer than this program; \
             this program reads formats 1 to 2: use a newer version of it",
            path.display()
        )
    );
}

#[test]
fn a_byte_order_mark_is_passed_over() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("marked.ron");
    fs::write(&path, format!("\u{feff}{}", to_text(&base_car()))).unwrap();
    assert_eq!(read(&path).unwrap(), base_car());
}

#[test]
fn the_line_ends_of_other_systems_are_read() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("lines.ron");
    fs::write(&path, to_text(&base_car()).replace('\n', "\r\n")).unwrap();
    assert_eq!(read(&path).unwrap(), base_car());
    fs::write(&path, "Setup(\r\n    format: 9,\r\n)").unwrap();
    let message = read(&path).unwrap_err().to_string();
    assert!(message.contains("lines.ron:2:13: "), "{message}");
}

#[test]
fn bytes_that_are_no_text_are_placed() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("bytes.ron");
    fs::write(&path, b"Setup(\n  // \xc3\xa4\xff").unwrap();
    let message = read(&path).unwrap_err().to_string();
    assert!(
        message.ends_with(
            ":2:7: this byte is not part of a UTF-8 text; give a setup file, a plain text saved as UTF-8"
        ),
        "{message}"
    );
}

#[test]
fn what_is_missing_or_no_file_or_too_large_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let message = |path: &Path| read(path).unwrap_err().to_string();
    let missing = message(&folder.path().join("none.ron"));
    assert!(
        missing.ends_with("check the name and the folder"),
        "{missing}"
    );
    let no_file = message(folder.path());
    assert!(
        no_file.ends_with("cannot be read: it is not a file; give a setup file"),
        "{no_file}"
    );
    let large = folder.path().join("large.ron");
    fs::write(&large, vec![b' '; 1_000_001]).unwrap();
    let large = message(&large);
    assert!(
        large.contains("it has 1000001 bytes, more than the 1000000"),
        "{large}"
    );
}

#[test]
fn a_save_under_a_file_fails_and_leaves_that_file() {
    let folder = tempfile::tempdir().unwrap();
    let blocking = folder.path().join("setup.ron");
    write(&blocking, &base_car()).unwrap();
    let error = write(&blocking.join("inside.ron"), &changed_car()).unwrap_err();
    assert!(matches!(error, FileError::Write { .. }));
    assert!(
        error.to_string().ends_with("save in a folder that exists"),
        "{error}"
    );
    assert_eq!(read(&blocking).unwrap(), base_car());
}

#[test]
fn a_save_over_a_folder_fails() {
    let folder = tempfile::tempdir().unwrap();
    let inner = folder.path().join("setup.ron");
    fs::create_dir(&inner).unwrap();
    let error = write(&inner, &base_car()).unwrap_err().to_string();
    assert!(error.contains("something there is not a file"), "{error}");
    assert_eq!(listing(folder.path()), ["setup.ron"]);
}

#[test]
fn a_save_into_a_folder_there_is_not_fails() {
    let folder = tempfile::tempdir().unwrap();
    let error = write(&folder.path().join("none/setup.ron"), &base_car()).unwrap_err();
    assert!(
        error.to_string().ends_with("save in a folder that exists"),
        "{error}"
    );
    assert!(listing(folder.path()).is_empty());
}

#[cfg(unix)]
mod unix {
    use super::*;
    use std::os::unix::fs::{PermissionsExt as _, symlink};

    fn mode(path: &Path) -> u32 {
        fs::metadata(path).unwrap().permissions().mode() & 0o777
    }

    #[test]
    fn the_old_files_rights_stay() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        for rights in [0o640, 0o600, 0o666] {
            fs::set_permissions(&path, fs::Permissions::from_mode(rights)).unwrap();
            write(&path, &changed_car()).unwrap();
            assert_eq!(mode(&path), rights);
        }
    }

    #[test]
    fn a_new_file_has_the_rights_of_any_new_file() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        let other = folder.path().join("other");
        fs::write(&other, "").unwrap();
        assert_eq!(mode(&path), mode(&other));
    }

    #[test]
    fn a_read_only_file_stays_as_it_is() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        fs::set_permissions(&path, fs::Permissions::from_mode(0o444)).unwrap();
        let error = write(&path, &changed_car()).unwrap_err().to_string();
        assert!(
            error.ends_with(
                "cannot be saved: the file is read-only; the file is as it was before: \
                 save under another name"
            ),
            "{error}"
        );
        assert_eq!(read(&path).unwrap(), base_car());
        assert_eq!(listing(folder.path()), ["setup.ron"]);
    }

    /// Root may write anywhere; as any other user this proves what happens in a folder without the right to.
    #[test]
    fn a_save_into_a_read_only_folder_fails_and_leaves_the_old_file() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o555)).unwrap();
        let may_write_anyway = fs::write(folder.path().join("probe"), "").is_ok();
        let result = write(&path, &changed_car());
        fs::set_permissions(folder.path(), fs::Permissions::from_mode(0o755)).unwrap();
        if may_write_anyway {
            result.unwrap();
            return;
        }
        let error = result.unwrap_err().to_string();
        assert!(
            error.ends_with("save under another name, in a folder you may write to"),
            "{error}"
        );
        assert_eq!(read(&path).unwrap(), base_car());
        assert_eq!(listing(folder.path()), ["setup.ron"]);
    }

    #[test]
    fn a_symbolic_link_is_followed_not_replaced() {
        let folder = tempfile::tempdir().unwrap();
        fs::create_dir(folder.path().join("real")).unwrap();
        let target = folder.path().join("real/setup.ron");
        let (first, second) = (
            folder.path().join("first.ron"),
            folder.path().join("second.ron"),
        );
        symlink("real/setup.ron", &first).unwrap();
        symlink(&first, &second).unwrap();
        // Through two links to a file that does not exist yet, and again over the one made so.
        for setup in [base_car(), changed_car()] {
            write(&second, &setup).unwrap();
            assert_eq!(read(&target).unwrap(), setup);
            assert!(fs::symlink_metadata(&first).unwrap().is_symlink());
            assert!(fs::symlink_metadata(&second).unwrap().is_symlink());
        }
    }

    #[test]
    fn links_in_a_circle_are_given_up() {
        let folder = tempfile::tempdir().unwrap();
        let (one, other) = (folder.path().join("one"), folder.path().join("other"));
        symlink(&one, &other).unwrap();
        symlink(&other, &one).unwrap();
        let error = write(&one, &base_car()).unwrap_err().to_string();
        assert!(
            error.contains("the symbolic links go round in circles"),
            "{error}"
        );
    }

    #[test]
    fn a_device_is_neither_read_nor_replaced() {
        let device = Path::new("/dev/full");
        if !device.exists() {
            return;
        }
        let folder = tempfile::tempdir().unwrap();
        let link = folder.path().join("setup.ron");
        symlink(device, &link).unwrap();
        let error = write(&link, &base_car()).unwrap_err().to_string();
        assert!(error.contains("something there is not a file"), "{error}");
        let error = read(&link).unwrap_err().to_string();
        assert!(error.contains("it is not a file"), "{error}");
        assert!(device.exists());
    }
}

/// Faults of the disk, of folders and of other programs: the file is the whole old or the whole new one.
#[cfg(unix)]
mod faults {
    #![allow(clippy::print_stderr)]

    use super::*;
    use std::path::PathBuf;
    use std::process::Command;

    /// A small file system of its own.
    struct SmallDisk(PathBuf);

    impl SmallDisk {
        /// Makes one of 64 KiB; none without the right to.
        fn at(path: PathBuf) -> Option<Self> {
            fs::create_dir(&path).unwrap();
            let mounted = Command::new("mount")
                .args(["-t", "tmpfs", "-o", "size=64k", "tmpfs"])
                .arg(&path)
                .output();
            mounted
                .is_ok_and(|output| output.status.success())
                .then_some(Self(path))
        }
    }

    impl SmallDisk {
        /// Mounts it again, "ro" or "rw".
        fn remount(&self, way: &str) {
            let options = format!("remount,{way}");
            let mounted = Command::new("mount")
                .args(["-o", &options])
                .arg(&self.0)
                .status();
            assert!(mounted.is_ok_and(|status| status.success()));
        }
    }

    impl Drop for SmallDisk {
        fn drop(&mut self) {
            let _ = Command::new("umount").arg(&self.0).status();
        }
    }

    /// A car with notes of some length.
    fn with_notes(bytes: usize) -> Setup {
        let mut setup = base_car();
        setup.record.notes = "n".repeat(bytes);
        setup
    }

    #[test]
    fn a_full_disk_leaves_the_old_file_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let Some(disk) = SmallDisk::at(folder.path().join("disk")) else {
            eprintln!("left out: no right to mount a small file system");
            return;
        };
        let path = disk.0.join("setup.ron");
        write(&path, &base_car()).unwrap();
        let error = write(&path, &with_notes(100_000)).unwrap_err().to_string();
        assert!(
            error.contains("the disk is full") && error.contains("free some space"),
            "{error}"
        );
        assert_eq!(read(&path).unwrap(), base_car());
        assert_eq!(listing(&disk.0), ["setup.ron"]);
        // With room again, the same save goes through.
        write(&path, &with_notes(100)).unwrap();
        assert_eq!(read(&path).unwrap(), with_notes(100));
    }

    /// Read-only for everybody, root included.
    #[test]
    fn a_disk_that_has_become_read_only_leaves_the_old_file() {
        let folder = tempfile::tempdir().unwrap();
        let Some(disk) = SmallDisk::at(folder.path().join("disk")) else {
            eprintln!("left out: no right to mount a small file system");
            return;
        };
        let path = disk.0.join("setup.ron");
        write(&path, &base_car()).unwrap();
        disk.remount("ro");
        let error = write(&path, &changed_car()).unwrap_err().to_string();
        assert!(error.contains("cannot be saved"), "{error}");
        assert!(error.contains("save under another name"), "{error}");
        assert_eq!(read(&path).unwrap(), base_car());
        disk.remount("rw");
        assert_eq!(listing(&disk.0), ["setup.ron"]);
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
    }

    /// What an open file holds from where it stands.
    fn all_of(file: fs::File) -> String {
        std::io::read_to_string(file).unwrap()
    }

    /// A lock of another program holds off only those who ask for it; its file is replaced, not written into.
    #[test]
    fn a_file_that_another_program_has_locked_stays_whole_for_it() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        let locked = fs::File::open(&path).unwrap();
        locked.lock().unwrap();
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
        assert_eq!(all_of(locked), to_text(&base_car()));
    }

    #[test]
    fn a_folder_that_vanishes_between_two_saves_is_told() {
        let folder = tempfile::tempdir().unwrap();
        let inner = folder.path().join("season");
        fs::create_dir(&inner).unwrap();
        let path = inner.join("setup.ron");
        write(&path, &base_car()).unwrap();
        fs::remove_dir_all(&inner).unwrap();
        let error = write(&path, &changed_car()).unwrap_err().to_string();
        assert!(error.ends_with("save in a folder that exists"), "{error}");
        fs::create_dir(&inner).unwrap();
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
    }

    #[test]
    fn a_file_replaced_by_another_program_is_replaced_as_a_whole() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("setup.ron");
        write(&path, &base_car()).unwrap();
        // Another program holds the old file open and has put another one in its place.
        let held = fs::File::open(&path).unwrap();
        fs::rename(&path, folder.path().join("old.ron")).unwrap();
        fs::write(&path, "theirs").unwrap();
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
        assert_eq!(
            all_of(held),
            to_text(&base_car()),
            "what others have open stays whole"
        );
    }

    #[test]
    fn long_names_and_names_of_every_script_are_written() {
        let folder = tempfile::tempdir().unwrap();
        let longest = format!("{}.ron", "s".repeat(251));
        let names = [
            "Gr\u{fc}\u{df}e \u{2013} \u{8f66}\u{8f6e} \u{1f3ce}.ron",
            "a\nb \"c\" 'd' \\.ron",
            " .ron",
            &longest,
        ];
        for name in names {
            let path = folder.path().join(name);
            write(&path, &changed_car()).unwrap();
            assert_eq!(read(&path).unwrap(), changed_car(), "{name}");
        }
        let mut deep = folder.path().to_owned();
        while deep.as_os_str().len() < 3_000 {
            deep.push("d".repeat(200));
            fs::create_dir(&deep).unwrap();
        }
        let path = deep.join("setup.ron");
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
        let too_long = folder.path().join(format!("{}.ron", "s".repeat(300)));
        let error = write(&too_long, &changed_car()).unwrap_err().to_string();
        assert!(error.contains("cannot be saved"), "{error}");
    }

    #[test]
    fn names_that_are_no_text_are_written() {
        use std::os::unix::ffi::OsStrExt as _;
        let folder = tempfile::tempdir().unwrap();
        let name = std::ffi::OsStr::from_bytes(b"s\xe4tup \xff.ron");
        let path = folder.path().join(name);
        if fs::write(&path, "").is_err() {
            eprintln!("left out: this file system takes names only that are text");
            return;
        }
        write(&path, &changed_car()).unwrap();
        assert_eq!(read(&path).unwrap(), changed_car());
    }

    #[test]
    fn what_saves_that_were_cut_short_have_left_goes_in_time() {
        let folder = tempfile::tempdir().unwrap();
        let leave = |name: &str, age: std::time::Duration| {
            let path = folder.path().join(name);
            let file = fs::File::create(&path).unwrap();
            file.set_modified(std::time::SystemTime::now() - age)
                .unwrap();
        };
        let hours = std::time::Duration::from_hours;
        leave(".steerloft-old.tmp", hours(2));
        leave(".steerloft-new.tmp", hours(0));
        leave("mine.tmp", hours(2));
        write(&folder.path().join("setup.ron"), &base_car()).unwrap();
        assert_eq!(
            listing(folder.path()),
            [".steerloft-new.tmp", "mine.tmp", "setup.ron"],
            "only what is ours and belongs to no save under way"
        );
    }
}
