//! Totals of lengths, turned back once.

use super::Length;
use crate::error::{Error, ErrorKind};
use core::ops::{Add, AddAssign, Mul, Neg, Sub, SubAssign};

/// A total of lengths in picometres, wide enough that no total of real lengths overflows.
///
/// Adding, subtracting, negating and multiplying lengths gives a `Sum`; [`Sum::length`] turns it back, checked. A total that
/// would leave 128 bits stays at that end, so that `length` refuses it.
///
/// ```
/// use seamwright::units::Length;
/// let a = Length::parse("10'")?;
/// let b = Length::parse("3 1/2\"")?;
/// assert_eq!((a + b - b * 2).length()?, Length::parse("9' 8-1/2\"")?);
/// assert!((Length::MAX + Length::MAX).length().is_err());
/// # Ok::<(), seamwright::error::Error>(())
/// ```
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Sum(i128);

impl Sum {
    /// Nothing yet.
    pub const ZERO: Sum = Sum(0);

    /// The total in picometres.
    #[must_use]
    pub const fn pm(self) -> i128 {
        self.0
    }

    /// The total as a length.
    ///
    /// # Errors
    /// [`ErrorKind::Overflow`] if it is beyond about 9 223 km.
    pub fn length(self) -> Result<Length, Error> {
        match i64::try_from(self.0) {
            Ok(pm) => Ok(Length::from_pm(pm)),
            Err(_) => {
                Err(Error::new(ErrorKind::Overflow, "a total of lengths is too large").value_of(format_args!("{} pm", self.0)).accepts("at most 9 223 372 m"))
            }
        }
    }

    fn plus(self, other: i128) -> Sum {
        // Sticky at the ends: what has once overflowed must not come back into range unseen.
        if self.0 == i128::MAX || self.0 == i128::MIN {
            return self;
        }
        if other == i128::MAX || other == i128::MIN {
            return Sum(other);
        }
        Sum(self.0.saturating_add(other))
    }
}

impl From<Length> for Sum {
    fn from(l: Length) -> Sum {
        Sum(i128::from(l.pm()))
    }
}

impl<T: Into<Sum>> Add<T> for Sum {
    type Output = Sum;
    fn add(self, rhs: T) -> Sum {
        self.plus(rhs.into().0)
    }
}

impl<T: Into<Sum>> Sub<T> for Sum {
    type Output = Sum;
    fn sub(self, rhs: T) -> Sum {
        self + -rhs.into()
    }
}

impl<T: Into<Sum>> AddAssign<T> for Sum {
    fn add_assign(&mut self, rhs: T) {
        *self = *self + rhs;
    }
}

impl<T: Into<Sum>> SubAssign<T> for Sum {
    fn sub_assign(&mut self, rhs: T) {
        *self = *self - rhs;
    }
}

impl Neg for Sum {
    type Output = Sum;
    fn neg(self) -> Sum {
        Sum(self.0.checked_neg().unwrap_or(i128::MAX))
    }
}

impl<T: Into<Sum>> Add<T> for Length {
    type Output = Sum;
    fn add(self, rhs: T) -> Sum {
        Sum::from(self) + rhs
    }
}

impl<T: Into<Sum>> Sub<T> for Length {
    type Output = Sum;
    fn sub(self, rhs: T) -> Sum {
        Sum::from(self) - rhs
    }
}

impl Neg for Length {
    type Output = Sum;
    fn neg(self) -> Sum {
        -Sum::from(self)
    }
}

impl Mul<i32> for Length {
    type Output = Sum;
    fn mul(self, times: i32) -> Sum {
        Sum(i128::from(self.pm()) * i128::from(times))
    }
}

impl<T: Into<Sum>> core::iter::Sum<T> for Sum {
    fn sum<I: Iterator<Item = T>>(iter: I) -> Sum {
        iter.fold(Sum::ZERO, |a, b| a + b)
    }
}
