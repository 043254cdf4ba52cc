"""Checked by mypy, not run: the types that a user's editor shows."""

from fractions import Fraction
from typing import assert_type

import seamwright
from seamwright import InputError
from seamwright.pitch import BendAt, Corner, CornerGeometry, Pitch, SlopeRule
from seamwright.record import Caution, Step, Worksheet
from seamwright.trim import BendRule, Flat, FlatPattern, Profile
from seamwright.units import Angle, Area, Length, LengthFormat, ShopRounding, Temperature, TemperatureDifference

length = Length('3 5/8"')
assert_type(length + Length("1 mm"), Length)
assert_type(length * 2, Length)
assert_type(2 * length, Length)
assert_type(-length, Length)
assert_type(length.fraction("in"), Fraction)
assert_type(length.pm, int)
assert_type(length.get("mm"), float)
assert_type(length.times("1 ft"), Area)
assert_type(length.format(LengthFormat("in/16")), str)
assert_type(Length.total(["1 mm", length]), Length)
assert_type(ShopRounding(length, "ceil").round("3 mm"), Length)
assert_type(Angle("3 deg").sin(), float)
assert_type(Area.new(1, "ft2").get("m2"), float)
assert_type(Temperature("3 K").above("2 K"), TemperatureDifference)
assert_type(length < Length("1 mm"), bool)
assert_type(Pitch("6:12").angle, Angle)
assert_type(Pitch("6:12").as_rise_run, tuple[Length, Length] | None)
assert_type(Corner("6:12", Pitch("6:12"), "90 deg").explain(), tuple[CornerGeometry, Worksheet])
assert_type(BendAt.rake().explain()[1].entries, list[Step | Worksheet])
assert_type(SlopeRule.IBC_STANDING_SEAM.check("3:12").cautions, list[Caution])


def of_a_trim(profile: Profile) -> None:
    assert_type(profile.unfold(BendRule.aviation()), Flat)
    assert_type(FlatPattern(profile, BendRule.aviation()).explain(), tuple[Flat, Worksheet])
    assert_type(profile.girth(BendRule.aviation()), Length)


try:
    Length("3")
except InputError as refusal:
    assert_type(refusal.path, str)
    assert_type(refusal.value, str | None)
    assert_type(refusal.span, tuple[int, int] | None)
    assert_type(refusal.others, tuple[seamwright.SeamwrightError, ...])
