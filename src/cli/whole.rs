//! Files are written whole or not at all.

use std::fs::{self, File, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};

/// What becomes of a file that is there already.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Existing {
    /// It is left as it is, and the writing refused.
    Kept,
    /// It is replaced.
    Replaced,
}

/// Writes a file whole or not at all: the bytes go into a file beside it, which then takes its name.
///
/// What is no plain file, such as a pipe or a device, is written to as it stands.
///
/// # Errors
/// What is in the way, in words that name the file.
pub(super) fn write_whole(name: &str, bytes: &[u8], existing: Existing) -> Result<(), String> {
    let goal = goal(name, existing)?;
    let told = |error: io::Error| format!("{name} could not be written: {error}");
    let Goal::File { path, replaced } = goal else {
        let mut device = OpenOptions::new().write(true).open(name).map_err(told)?;
        return device.write_all(bytes).and_then(|()| device.flush()).map_err(told);
    };
    let (mut file, beside) = file_beside(&path).map_err(told)?;
    let written = file.write_all(bytes).and_then(|()| file.sync_all()).and_then(|()| {
        if let Some(before) = &replaced {
            fs::set_permissions(&beside, before.permissions())?;
        }
        fs::rename(&beside, &path)
    });
    if written.is_err() {
        // What is left beside it is half a file: nobody misses it.
        let _ = fs::remove_file(&beside);
    }
    written.map_err(told)
}

/// Whether a file could be written now, without writing it.
///
/// # Errors
/// As for [`write_whole`].
pub(super) fn could_write(name: &str, existing: Existing) -> Result<(), String> {
    if let Goal::File { path, .. } = goal(name, existing)? {
        let (_, beside) =
            file_beside(&path).map_err(|error| format!("{name} could not be written: {error}"))?;
        let _ = fs::remove_file(beside);
    }
    Ok(())
}

enum Goal {
    /// A file to be made, or to be replaced where it was there before.
    File { path: PathBuf, replaced: Option<fs::Metadata> },
    /// A pipe or a device.
    Device,
}

fn goal(name: &str, existing: Existing) -> Result<Goal, String> {
    let path = Path::new(name);
    match path.metadata() {
        Ok(about) if about.is_dir() => Err(format!("{name}: this is a directory; name a file in it")),
        Ok(about) if !about.is_file() => Ok(Goal::Device),
        Ok(_) if existing == Existing::Kept => {
            Err(format!("{name} is there already and is left as it is; --force replaces it"))
        }
        Ok(about) => {
            // A link keeps pointing to the file that is replaced.
            let path = path.canonicalize().map_err(|error| format!("{name}: {error}"))?;
            Ok(Goal::File { path, replaced: Some(about) })
        }
        Err(error) if error.kind() == io::ErrorKind::NotFound && path.file_name().is_some() => {
            let folder = folder_of(path);
            if !folder.is_dir() {
                return Err(format!("{name}: there is no folder {}", folder.display()));
            }
            Ok(Goal::File { path: path.to_owned(), replaced: None })
        }
        Err(error) => Err(format!("{name} could not be written: {error}")),
    }
}

fn folder_of(path: &Path) -> &Path {
    match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    }
}

/// A new file in the folder of another.
fn file_beside(path: &Path) -> io::Result<(File, PathBuf)> {
    let folder = folder_of(path);
    let mut number = 0;
    loop {
        let beside = folder.join(format!(".fencegust-{}-{number}", std::process::id()));
        match OpenOptions::new().write(true).create_new(true).open(&beside) {
            Ok(file) => return Ok((file, beside)),
            Err(error) if error.kind() == io::ErrorKind::AlreadyExists && number < 100 => number += 1,
            Err(error) => return Err(error),
        }
    }
}
