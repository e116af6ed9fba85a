//! Catalogue files: one a publication, title and units at the head, then comma-separated rows.

use std::fmt;

/// A catalogue as it stands in its file.
#[derive(Debug, Clone)]
pub struct Catalogue {
    /// The publication, from the head.
    pub title: String,
    /// How well its values are known, from the head.
    pub known: String,
    /// The names of the columns, in their order.
    pub columns: Vec<String>,
    /// The rows.
    pub rows: Vec<Row>,
}

/// One row, read by the names of its columns.
#[derive(Debug, Clone)]
pub struct Row {
    line: u64,
    fields: Vec<(String, String)>,
}

/// Why a catalogue could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CatalogueError {
    /// The head lacks a line.
    Head(&'static str),
    /// A row is not well formed.
    Row(String),
    /// A row lacks a column.
    Column {
        /// The line in the file.
        line: u64,
        /// The column asked for.
        column: String,
    },
    /// A field is not the number its column says.
    Number {
        /// The line in the file.
        line: u64,
        /// The column.
        column: String,
        /// What stands there.
        found: String,
    },
}

impl fmt::Display for CatalogueError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Head(what) => write!(f, "the head has no line \"# {what}: …\""),
            Self::Row(why) => f.write_str(why),
            Self::Column { line, column } => write!(f, "line {line} has no column {column}"),
            Self::Number { line, column, found } => {
                write!(f, "line {line}: {column} is \"{found}\", which is no number")
            }
        }
    }
}

impl std::error::Error for CatalogueError {}

impl Catalogue {
    /// Reads a catalogue: lines `# title: …` and `# known: …`, then a header row and rows.
    ///
    /// # Errors
    /// A [`CatalogueError`] that names the line.
    pub fn read(text: &str) -> Result<Self, CatalogueError> {
        let head = |what: &'static str| {
            text.lines()
                .take_while(|line| line.starts_with('#'))
                .find_map(|line| line.strip_prefix("# ")?.strip_prefix(what)?.strip_prefix(": "))
                .map(str::to_owned)
                .ok_or(CatalogueError::Head(what))
        };
        let (title, known) = (head("title")?, head("known")?);
        let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_reader(text.as_bytes());
        let columns: Vec<String> = reader
            .headers()
            .map_err(|error| CatalogueError::Row(error.to_string()))?
            .iter()
            .map(str::to_owned)
            .collect();
        let mut rows = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|error| CatalogueError::Row(error.to_string()))?;
            let line = record.position().map_or(0, csv::Position::line);
            let fields = columns.iter().cloned().zip(record.iter().map(str::to_owned)).collect();
            rows.push(Row { line, fields });
        }
        Ok(Self { title, known, columns, rows })
    }
}

impl Row {
    /// The text of a column.
    ///
    /// # Errors
    /// If there is no such column.
    pub fn text(&self, column: &str) -> Result<&str, CatalogueError> {
        self.fields
            .iter()
            .find(|(name, _)| name == column)
            .map(|(_, text)| text.as_str())
            .ok_or_else(|| CatalogueError::Column { line: self.line, column: column.to_owned() })
    }

    /// The number of a column.
    ///
    /// # Errors
    /// If there is no such column or no number in it.
    pub fn number(&self, column: &str) -> Result<f64, CatalogueError> {
        let found = self.text(column)?;
        found.parse().ok().filter(|value: &f64| value.is_finite()).ok_or_else(|| CatalogueError::Number {
            line: self.line,
            column: column.to_owned(),
            found: found.to_owned(),
        })
    }

    /// The number of a column and its unit, which is the end of the column's name, as in `diameter_in`.
    ///
    /// # Errors
    /// If there is no such column, no number in it, or no unit in its name.
    pub fn quantity<'c>(&self, column: &'c str) -> Result<(f64, &'c str), CatalogueError> {
        match column.rsplit_once('_') {
            Some((_, unit)) => Ok((self.number(column)?, unit)),
            None => Err(CatalogueError::Column { line: self.line, column: column.to_owned() }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_is_read_by_name_and_unit() {
        let catalogue =
            Catalogue::read("# title: T\n# known: second-hand\nname,wall_in,note\na,0.203,\n").unwrap();
        let row = &catalogue.rows[0];
        assert_eq!(row.text("name").unwrap(), "a");
        assert_eq!(row.quantity("wall_in").unwrap(), (0.203, "in"));
        assert!(row.quantity("wall").is_err());
        assert!(row.number("note").is_err());
        assert_eq!(Catalogue::read("name\na\n").unwrap_err(), CatalogueError::Head("title"));
    }

    #[test]
    fn what_is_wrong_with_a_catalogue_names_its_line_and_what_stands_there() {
        let head = "# title: T\n# known: second-hand\nname,wall_in\n";
        let told = |text: &str| Catalogue::read(text).unwrap_err().to_string();
        assert_eq!(told("# known: K\nname\n"), "the head has no line \"# title: …\"");
        assert_eq!(told("# title: T\nname\n"), "the head has no line \"# known: …\"");
        let ragged = told(&format!("{head}a,0.2,0.3\n"));
        assert!(ragged.contains("line: 4") || ragged.contains("line 4"), "{ragged}");
        let catalogue = Catalogue::read(&format!("{head}a,thick\nb,inf\n")).unwrap();
        let row = |at: usize| &catalogue.rows[at];
        assert_eq!(row(0).text("wall").unwrap_err().to_string(), "line 4 has no column wall");
        assert_eq!(row(0).quantity("name").unwrap_err().to_string(), "line 4 has no column name");
        assert_eq!(
            row(0).number("wall_in").unwrap_err().to_string(),
            "line 4: wall_in is \"thick\", which is no number"
        );
        assert_eq!(
            row(1).number("wall_in").unwrap_err().to_string(),
            "line 5: wall_in is \"inf\", which is no number"
        );
    }
}
