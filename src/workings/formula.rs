//! The text of a formula as a tree, for whoever prints it.
//!
//! Accepted are plain names, numbers, `+ - * /`, parentheses and the methods `squared`, `cubed`,
//! `to_the_fourth`, `sqrt`, `exp`, `ln`, `ln_1p`, `sin`, `cos`, `tan`, `acos`, `atan`, `abs`, `powf`, `min`, `max`, `clamp` and
//! `pure` (a quotient as a plain number, printed as nothing).

use std::fmt;

/// A formula as a tree.
#[derive(Debug, Clone, PartialEq)]
pub enum Formula {
    /// A number as it stands.
    Number(String),
    /// The name of an input.
    Name(String),
    /// A change of sign.
    Minus(Box<Formula>),
    /// Two parts and the sign between them.
    Pair(Box<Formula>, char, Box<Formula>),
    /// A method and what it is called on and with.
    Call(String, Vec<Formula>),
}

/// Why the text is not a formula this reader knows.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FormulaError {
    /// The text from where it could not go on.
    pub at: String,
}

impl fmt::Display for FormulaError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "not a formula from \"{}\" on", self.at)
    }
}

impl std::error::Error for FormulaError {}

const METHODS: &[&str] = &[
    "squared",
    "cubed",
    "to_the_fourth",
    "sqrt",
    "exp",
    "ln",
    "ln_1p",
    "sin",
    "cos",
    "tan",
    "acos",
    "atan",
    "abs",
    "powf",
    "min",
    "max",
    "clamp",
    "pure",
];

struct Reader<'a> {
    rest: &'a str,
}

impl Reader<'_> {
    fn fail<T>(&self) -> Result<T, FormulaError> {
        Err(FormulaError { at: self.rest.to_owned() })
    }
    fn eat(&mut self, sign: char) -> bool {
        self.rest = self.rest.trim_start();
        match self.rest.strip_prefix(sign) {
            Some(rest) => {
                self.rest = rest;
                true
            }
            None => false,
        }
    }
    fn take_while(&mut self, keep: impl Fn(char) -> bool) -> String {
        self.rest = self.rest.trim_start();
        let end = self.rest.find(|c| !keep(c)).unwrap_or(self.rest.len());
        let (word, rest) = self.rest.split_at(end);
        self.rest = rest;
        word.to_owned()
    }
    fn sum(&mut self) -> Result<Formula, FormulaError> {
        self.chain(&['+', '-'], Self::product)
    }
    fn product(&mut self) -> Result<Formula, FormulaError> {
        self.chain(&['*', '/'], Self::signed)
    }
    fn chain(
        &mut self,
        signs: &[char],
        part: fn(&mut Self) -> Result<Formula, FormulaError>,
    ) -> Result<Formula, FormulaError> {
        let mut left = part(self)?;
        while let Some(sign) = signs.iter().copied().find(|sign| self.eat(*sign)) {
            left = Formula::Pair(Box::new(left), sign, Box::new(part(self)?));
        }
        Ok(left)
    }
    fn signed(&mut self) -> Result<Formula, FormulaError> {
        if self.eat('-') { Ok(Formula::Minus(Box::new(self.signed()?))) } else { self.called() }
    }
    fn called(&mut self) -> Result<Formula, FormulaError> {
        let mut value = self.single()?;
        while self.eat('.') {
            let method = self.take_while(|c| c.is_alphanumeric() || c == '_');
            if !METHODS.contains(&method.as_str()) || !self.eat('(') {
                return self.fail();
            }
            let mut parts = vec![value];
            while !self.eat(')') {
                parts.push(self.sum()?);
                if !self.eat(',') && !self.rest.trim_start().starts_with(')') {
                    return self.fail();
                }
            }
            let wanted = match method.as_str() {
                "powf" | "min" | "max" => 2,
                "clamp" => 3,
                _ => 1,
            };
            if parts.len() != wanted {
                return self.fail();
            }
            value = Formula::Call(method, parts);
        }
        Ok(value)
    }
    fn single(&mut self) -> Result<Formula, FormulaError> {
        if self.eat('(') {
            let inner = self.sum()?;
            return if self.eat(')') { Ok(inner) } else { self.fail() };
        }
        match self.rest.chars().next() {
            Some(c) if c.is_ascii_digit() => {
                // "2.0" is a number, "2.sqrt()" a method on one: a point counts before a digit only.
                let mut number = self.take_while(|c| c.is_ascii_digit() || c == '_');
                if self.rest.starts_with('.') && self.rest[1..].starts_with(|c: char| c.is_ascii_digit()) {
                    self.rest = &self.rest[1..];
                    number = format!("{number}.{}", self.take_while(|c| c.is_ascii_digit() || c == '_'));
                }
                // A method on a number needs its type said, as in "0.658_f64.powf(x)"; a reader does not.
                if number.ends_with('_')
                    && let Some(rest) = self.rest.strip_prefix("f64")
                {
                    self.rest = rest;
                }
                Ok(Formula::Number(number.replace('_', "")))
            }
            Some(c) if c.is_alphabetic() => {
                Ok(Formula::Name(self.take_while(|c| c.is_alphanumeric() || c == '_')))
            }
            _ => self.fail(),
        }
    }
}

impl Formula {
    /// Reads the text of an expression.
    ///
    /// # Errors
    /// From where on it is no formula.
    pub fn read(text: &str) -> Result<Self, FormulaError> {
        let mut reader = Reader { rest: text };
        let formula = reader.sum()?;
        if reader.rest.trim().is_empty() { Ok(formula) } else { reader.fail() }
    }

    /// The formula in one line of text; `name` says how each input is written.
    #[must_use]
    pub fn text(&self, name: &dyn Fn(&str) -> String) -> String {
        self.written(name, 0)
    }

    fn written(&self, name: &dyn Fn(&str) -> String, outer: u8) -> String {
        let (text, own) = match self {
            Self::Number(number) => {
                let short = if number.contains('.') {
                    number.trim_end_matches('0').trim_end_matches('.').to_owned()
                } else {
                    number.clone()
                };
                (short, 4)
            }
            Self::Name(key) => {
                let text = name(key);
                let own = if text.contains(' ') { 3 } else { 4 };
                (text, own)
            }
            Self::Minus(inner) => (format!("−{}", inner.written(name, 3)), 2),
            Self::Pair(left, sign, right) => match sign {
                '+' => (format!("{} + {}", left.written(name, 1), right.written(name, 1)), 1),
                '-' => (format!("{} − {}", left.written(name, 1), right.written(name, 2)), 1),
                '*' => (format!("{} × {}", left.written(name, 2), right.written(name, 2)), 2),
                _ => (format!("{} / {}", left.written(name, 2), right.written(name, 3)), 2),
            },
            Self::Call(method, parts) => {
                let inner = |at: usize, outer| parts[at].written(name, outer);
                match method.as_str() {
                    "pure" => return inner(0, outer),
                    "squared" => (format!("{}²", inner(0, 4)), 4),
                    "cubed" => (format!("{}³", inner(0, 4)), 4),
                    "to_the_fourth" => (format!("{}⁴", inner(0, 4)), 4),
                    "sqrt" => (format!("√{}", inner(0, 4)), 4),
                    "powf" => (format!("{}^{}", inner(0, 4), inner(1, 4)), 4),
                    "abs" => (format!("|{}|", inner(0, 0)), 4),
                    "ln_1p" => (format!("ln(1 + {})", inner(0, 1)), 4),
                    "min" | "max" => (format!("{method}({}, {})", inner(0, 0), inner(1, 0)), 4),
                    "clamp" => (format!("clamp({}, {} to {})", inner(0, 0), inner(1, 0), inner(2, 0)), 4),
                    other => (format!("{other}({})", inner(0, 0)), 4),
                }
            }
        };
        if own < outer { format!("({text})") } else { text }
    }
}

impl Formula {
    /// The formula in MathML; `name` gives the MathML of each input.
    #[must_use]
    pub fn mathml(&self, name: &dyn Fn(&str) -> String) -> String {
        self.marked(name, 0)
    }

    fn marked(&self, name: &dyn Fn(&str) -> String, outer: u8) -> String {
        let sign = |sign: &str| format!("<mo>{sign}</mo>");
        let (text, own) = match self {
            Self::Number(_) => (format!("<mn>{}</mn>", self.written(name, 0)), 4),
            Self::Name(key) => (name(key), 4),
            Self::Minus(inner) => (format!("{}{}", sign("−"), inner.marked(name, 3)), 2),
            Self::Pair(left, '+', right) => {
                (format!("{}{}{}", left.marked(name, 1), sign("+"), right.marked(name, 1)), 1)
            }
            Self::Pair(left, '-', right) => {
                (format!("{}{}{}", left.marked(name, 1), sign("−"), right.marked(name, 2)), 1)
            }
            Self::Pair(left, '*', right) => {
                (format!("{}{}{}", left.marked(name, 2), sign("×"), right.marked(name, 2)), 2)
            }
            // A fraction brackets its parts by standing them one above the other.
            Self::Pair(over, _, under) => (
                format!(
                    "<mfrac><mrow>{}</mrow><mrow>{}</mrow></mfrac>",
                    over.marked(name, 0),
                    under.marked(name, 0)
                ),
                4,
            ),
            Self::Call(method, parts) => {
                let inner = |at: usize, outer| parts[at].marked(name, outer);
                let power = |of: u8, exponent: &str| {
                    format!("<msup><mrow>{}</mrow><mrow>{exponent}</mrow></msup>", inner(0, of))
                };
                match method.as_str() {
                    "pure" => return inner(0, outer),
                    "squared" => (power(5, "<mn>2</mn>"), 4),
                    "cubed" => (power(5, "<mn>3</mn>"), 4),
                    "to_the_fourth" => (power(5, "<mn>4</mn>"), 4),
                    "powf" => (power(5, &inner(1, 0)), 4),
                    "sqrt" => (format!("<msqrt>{}</msqrt>", inner(0, 0)), 4),
                    "abs" => (format!("{}{}{}", sign("|"), inner(0, 0), sign("|")), 4),
                    "ln_1p" => {
                        let inside = format!("<mn>1</mn>{}{}", sign("+"), inner(0, 1));
                        (format!("<mi>ln</mi>{}{inside}{}", sign("("), sign(")")), 4)
                    }
                    other => {
                        let parts: Vec<String> = (0..parts.len()).map(|at| inner(at, 0)).collect();
                        (format!("<mi>{other}</mi>{}{}{}", sign("("), parts.join("<mo>,</mo>"), sign(")")), 4)
                    }
                }
            }
        };
        // A single name or number under a power needs no brackets; a fraction or power does.
        let bracketed = !matches!(self, Self::Number(_) | Self::Name(_)) && own < outer;
        if bracketed {
            format!("<mrow>{}{text}{}</mrow>", sign("("), sign(")"))
        } else {
            format!("<mrow>{text}</mrow>")
        }
    }
}

/// A symbol such as `K_z` in MathML, its lower part set low.
#[must_use]
pub fn symbol_mathml(symbol: &str) -> String {
    let escaped = |text: &str| text.replace('&', "&amp;").replace('<', "&lt;").replace('>', "&gt;");
    match symbol.split_once('_') {
        Some((base, low)) => {
            format!("<msub><mi>{}</mi><mi>{}</mi></msub>", escaped(base), escaped(low))
        }
        None => format!("<mi>{}</mi>", escaped(symbol)),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(source: &str) -> String {
        Formula::read(source).unwrap().text(&|name| name.to_owned())
    }

    #[test]
    fn a_formula_keeps_its_meaning_and_no_more_brackets_than_it_needs() {
        assert_eq!(
            text("0.5 * a * (1.0 + (1.0 + 4.36 * (h / a).pure()).sqrt())"),
            "0.5 × a × (1 + √(1 + 4.36 × h / a))"
        );
        assert_eq!(text("2.01 * (z / zg).pure().powf(2.0 / alpha)"), "2.01 × (z / zg)^(2 / alpha)");
        assert_eq!(text("a - (b - c)"), "a − (b − c)");
        assert_eq!(text("a / (b * c)"), "a / (b × c)");
        assert_eq!(text("(-(r * z).pure()).exp()"), "exp(−(r × z))");
        assert_eq!(text("(d.cubed() - e.cubed()) / 6.0"), "(d³ − e³) / 6");
        assert_eq!(text("a.min(b) * 2.0"), "min(a, b) × 2");
        assert_eq!(text("a.clamp(0.0, b + 1.0) - -c"), "clamp(a, 0 to b + 1) − −c");
        assert_eq!(text("(a - b).abs() + a.ln()"), "|a − b| + ln(a)");
        assert_eq!(text("a * (b + c) / d.to_the_fourth()"), "a × (b + c) / d⁴");
        assert_eq!(text("-(a + b) * 100.0"), "−(a + b) × 100");
        assert_eq!(text("0.658_f64.powf((f / e).pure()) * f"), "0.658^(f / e) × f");
        assert_eq!(text("(a * t).ln_1p() / a"), "ln(1 + a × t) / a");
        assert_eq!(text("(PI / 4.0 + f / 2.0).tan().squared()"), "tan(PI / 4 + f / 2)²");
        assert_eq!(text("r * (1.0 - t.cos()) + (r / g).pure().acos()"), "r × (1 − cos(t)) + acos(r / g)");
    }

    #[test]
    fn numbers_with_units_are_bracketed_under_a_power() {
        let formula = Formula::read("c * v.squared()").unwrap();
        assert_eq!(formula.text(&|name| format!("2 {name}")), "2 c × (2 v)²");
    }

    #[test]
    fn mathml_comes_from_the_same_tree() {
        let formula = Formula::read("0.5 * a * (1.0 + (h / a).pure()).sqrt()").unwrap();
        let marked = formula.mathml(&symbol_mathml);
        assert_eq!(
            marked.replace("<mrow>", "").replace("</mrow>", ""),
            "<mn>0.5</mn><mo>×</mo><mi>a</mi><mo>×</mo><msqrt><mn>1</mn><mo>+</mo><mfrac><mi>h</mi><mi>a</mi></mfrac></msqrt>"
        );
        let log = Formula::read("t.ln_1p()").unwrap().mathml(&symbol_mathml);
        assert!(log.contains("<mi>ln</mi><mo>(</mo><mn>1</mn><mo>+</mo>"), "{log}");
        let power = Formula::read("(1.0 - s).powf(1.5)").unwrap().mathml(&symbol_mathml);
        assert!(power.contains("<mo>(</mo><mrow><mn>1</mn></mrow><mo>−</mo>"), "{power}");
        assert_eq!(symbol_mathml("K_z"), "<msub><mi>K</mi><mi>z</mi></msub>");
        assert_eq!(symbol_mathml("a<b&c"), "<mi>a&lt;b&amp;c</mi>");
    }

    #[test]
    fn in_mathml_only_what_is_more_than_a_name_is_bracketed_under_a_power() {
        let marked = |source: &str| {
            let formula = Formula::read(source).unwrap();
            formula.mathml(&symbol_mathml).replace("<mrow>", "").replace("</mrow>", "")
        };
        assert_eq!(marked("v.squared()"), "<msup><mi>v</mi><mn>2</mn></msup>");
        assert_eq!(marked("2.0.cubed()"), "<msup><mn>2</mn><mn>3</mn></msup>");
        assert_eq!(
            marked("(a / b).to_the_fourth()"),
            "<msup><mo>(</mo><mfrac><mi>a</mi><mi>b</mi></mfrac><mo>)</mo><mn>4</mn></msup>"
        );
        assert_eq!(
            marked("a - (b - c)"),
            "<mi>a</mi><mo>−</mo><mo>(</mo><mi>b</mi><mo>−</mo><mi>c</mi><mo>)</mo>"
        );
        assert_eq!(
            marked("a * (b + c) + (-d).abs()"),
            "<mi>a</mi><mo>×</mo><mo>(</mo><mi>b</mi><mo>+</mo><mi>c</mi><mo>)</mo><mo>+</mo><mo>|</mo><mo>−</mo><mi>d</mi><mo>|</mo>"
        );
        assert_eq!(marked("a.min(b)"), "<mi>min</mi><mo>(</mo><mi>a</mi><mo>,</mo><mi>b</mi><mo>)</mo>");
        assert_eq!(marked("a.powf(1.5).sqrt()"), "<msqrt><msup><mi>a</mi><mn>1.5</mn></msup></msqrt>");
    }

    #[test]
    fn what_is_no_formula_is_refused() {
        for text in [
            "self.a",
            "2f64",
            "a_f64.",
            "a +",
            "a.floor()",
            "f(x)",
            "a b",
            "a.min(b, c)",
            "a.sqrt(b)",
            "a.powf()",
            "",
        ] {
            assert!(Formula::read(text).is_err(), "{text}");
        }
        let told = |text: &str| Formula::read(text).unwrap_err().to_string();
        for (text, at) in [("a b", "b"), ("2.0 * a.floor()", "()"), ("(a + )", ")")] {
            assert_eq!(told(text), format!("not a formula from \"{at}\" on"));
        }
    }
}
