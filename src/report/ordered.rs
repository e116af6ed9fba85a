//! JSON whose keys stand in the order in which they are written.

use serde::Serialize;
use serde::ser::{SerializeMap, Serializer};

/// A piece of JSON.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Json {
    /// Nothing.
    Null,
    /// Yes or no.
    Truth(bool),
    /// A figure.
    Figure(f64),
    /// A count.
    Count(u64),
    /// Words.
    Words(String),
    /// A list.
    List(Vec<Json>),
    /// Keys and what stands under each.
    Keys(Vec<(String, Json)>),
}

impl Json {
    /// Keys and what stands under each.
    pub(super) fn keys<const N: usize>(keys: [(&str, Self); N]) -> Self {
        Self::Keys(keys.into_iter().map(|(key, value)| (key.to_owned(), value)).collect())
    }

    /// A list of words.
    pub(super) fn words<W: Into<String>>(words: impl IntoIterator<Item = W>) -> Self {
        Self::List(words.into_iter().map(|words| Self::Words(words.into())).collect())
    }
}

impl From<&str> for Json {
    fn from(words: &str) -> Self {
        Self::Words(words.to_owned())
    }
}

impl From<String> for Json {
    fn from(words: String) -> Self {
        Self::Words(words)
    }
}

impl Serialize for Json {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        match self {
            Self::Null => serializer.serialize_unit(),
            Self::Truth(truth) => serializer.serialize_bool(*truth),
            Self::Figure(figure) => serializer.serialize_f64(*figure),
            Self::Count(count) => serializer.serialize_u64(*count),
            Self::Words(words) => serializer.serialize_str(words),
            Self::List(list) => serializer.collect_seq(list),
            Self::Keys(keys) => {
                let mut map = serializer.serialize_map(Some(keys.len()))?;
                for (key, value) in keys {
                    map.serialize_entry(key, value)?;
                }
                map.end()
            }
        }
    }
}
