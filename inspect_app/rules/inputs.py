"""Read a rule's inputs: one small reader per dimension, each refusing with the field's name."""

from inspect_app.rules.decimal_text import read_decimal
from inspect_app.rules.hex_text import read_hex
from inspect_app.rules.quantity import convert, parse
from inspect_app.rules.refused import Refused
from inspect_app.rules.unit import SYSTEMS, change_unit, dimension_of, system_of

MOST_IN_A_LIST = 1000


def wanted(
    dimension: str,
    required: bool = True,
    least: "float | None" = 0.0,
    most_mm: "float | None" = None,
    choices: "tuple | None" = None,
    above_zero: bool = False,
) -> dict:
    """The description of one input. ``least`` bounds the converted number (None: any sign), ``most_mm`` a
    length that is small by nature, ``above_zero`` excludes zero."""
    return {
        "dimension": dimension,
        "required": required,
        "least": least,
        "most_mm": most_mm,
        "choices": choices,
        "above_zero": above_zero,
    }


def system_for(description: dict, inputs: dict, order: tuple) -> str:
    """``US`` or ``SI``: the system of the first quantity given, in ``order``; US when none tells."""
    for name in order:
        given = inputs.get(name)
        if isinstance(given, (list, tuple)) and len(given) > 0:
            given = given[0]
        if isinstance(given, dict) and isinstance(given.get("unit"), str):
            system = system_of(given["unit"])
            if system is not None and description[name]["dimension"] != "taps":
                return system
    return "US"


def read_all(description: dict, inputs: dict, system: str) -> dict:
    """Name → number in the system's unit (slopes as rise in 12), text, boolean, list; None when not given."""
    # Sorted, so that of two mistakes both interpreters name the same one: MicroPython's dicts have no order.
    for name in sorted(inputs):
        if name not in description:
            raise Refused("unknown_input", name, plain(inputs[name]))
    given: dict = {}
    for name in sorted(description):
        raw = inputs.get(name)
        if raw is None:
            if description[name]["required"]:
                raise Refused("missing", name)
            given[name] = None
        else:
            given[name] = _read(description[name], name, raw, system)
    return given


def _read(wants: dict, name: str, raw: object, system: str) -> object:
    dimension = wants["dimension"]
    if dimension == "choice":
        return _choice(wants, name, raw)
    if dimension == "choices":
        return _choices(wants, name, raw)
    if dimension == "boolean":
        if raw is True or raw is False:
            return raw
        raise Refused("not_boolean", name, plain(raw))
    if dimension == "text":
        return _text(name, raw)
    if dimension == "integer":
        return _within(wants, name, raw, float(read_integer(raw, name)), system)
    if dimension == "number":
        return _within(wants, name, raw, read_number(raw, name), system)
    if dimension == "pixels":
        return _within(wants, name, raw, read_pixel(raw, name), system)
    if dimension == "hex":
        return read_hex(raw, name)
    if dimension == "letters":
        return _letters(name, raw)
    if dimension == "taps":
        return _taps(name, raw)
    if dimension == "card":
        return _card(name, raw)
    if dimension == "slopes":
        return _slopes(name, raw)
    if dimension == "any":
        return raw
    if dimension == "points":
        return _points(name, raw, system)
    if dimension == "lengths":
        return _lengths(wants, name, raw, system)
    return _within(wants, name, raw, convert(raw, SYSTEMS[system][dimension], name), system)


def _within(wants: dict, name: str, raw: object, number: float, system: str) -> float:
    least = wants["least"]
    if least is not None and number < least:
        raise Refused("negative", name, plain(raw))
    if wants["above_zero"] and not number > 0.0:
        raise Refused("not_above_zero", name, plain(raw))
    most = wants["most_mm"]
    if most is not None and number > change_unit(most, "mm", SYSTEMS[system]["length"]):
        raise Refused("out_of_range", name, plain(raw))
    return number


def _lengths(wants: dict, name: str, raw: object, system: str) -> list:
    if not isinstance(raw, (list, tuple)) or len(raw) == 0:
        raise Refused("not_list", name, plain(raw))
    if len(raw) > MOST_IN_A_LIST:
        raise Refused("too_many", name, len(raw))
    numbers = []
    for position in range(len(raw)):
        field = name + "[" + str(position) + "]"
        number = convert(raw[position], SYSTEMS[system]["length"], field)
        numbers.append(_within(wants, field, raw[position], number, system))
    return numbers


def _slopes(name: str, raw: object) -> list:
    """In degrees; an instrument that lies near level may read a little below it."""
    if not isinstance(raw, (list, tuple)) or len(raw) == 0:
        raise Refused("not_slopes", name, plain(raw))
    if len(raw) > MOST_IN_A_LIST:
        raise Refused("too_many", name, len(raw))
    degrees = []
    for position in range(len(raw)):
        field, one = name + "[" + str(position) + "]", raw[position]
        if not isinstance(one, dict) or dimension_of(one.get("unit")) != "slope":
            raise Refused("not_slopes", field, plain(one))
        number = read_decimal(one.get("value"), field)
        if one["unit"] != "deg":
            number = change_unit(number, one["unit"], "deg")
        if not -10.0 <= number <= 85.0:
            raise Refused("out_of_range", field, plain(one))
        degrees.append(number)
    return degrees


def _points(name: str, raw: object, system: str) -> list:
    """Tested points ``[[spacing, pressure], …]`` as pairs of numbers, each above zero."""
    if not isinstance(raw, (list, tuple)) or len(raw) == 0:
        raise Refused("not_points", name, plain(raw))
    if len(raw) > MOST_IN_A_LIST:
        raise Refused("too_many", name, len(raw))
    points = []
    for position in range(len(raw)):
        field, pair = name + "[" + str(position) + "]", raw[position]
        if not isinstance(pair, (list, tuple)) or len(pair) != 2:
            raise Refused("not_points", field, plain(pair))
        numbers = [convert(pair[at], SYSTEMS[system][("length", "pressure")[at]], field) for at in (0, 1)]
        for at in (0, 1):
            if not numbers[at] > 0.0:
                raise Refused("not_above_zero", field, plain(pair[at]))
        points.append((numbers[0], numbers[1]))
    return points


def _choice(wants: dict, name: str, raw: object) -> object:
    if isinstance(raw, str) and raw in wants["choices"]:
        return raw
    raise Refused("not_choice", name, plain(raw))


def _choices(wants: dict, name: str, raw: object) -> list:
    if not isinstance(raw, (list, tuple)) or len(raw) == 0:
        raise Refused("not_choices", name, plain(raw))
    if len(raw) > MOST_IN_A_LIST:
        raise Refused("too_many", name, len(raw))
    return [_choice(wants, name + "[" + str(position) + "]", raw[position]) for position in range(len(raw))]


def _letters(name: str, raw: object) -> list:
    """``"A,A,R"`` or a list of such letters; which ones may stand in it is the rule's to say."""
    letters = raw
    if isinstance(raw, str):  # no lot yet is an empty text
        letters = [part.strip() for part in raw.split(",")] if raw else []
    if not isinstance(letters, (list, tuple)) or not all(isinstance(one, str) for one in letters):
        raise Refused("not_letters", name, plain(raw))
    if len(letters) > MOST_IN_A_LIST:
        raise Refused("too_many", name, len(letters))
    return list(letters)


def _text(name: str, raw: object) -> str:
    if isinstance(raw, str) and 0 < len(raw) <= 100:
        return raw
    if isinstance(raw, int) and raw is not True and raw is not False and 0 <= raw < 1000000:
        return str(raw)
    raise Refused("not_text", name, plain(raw))


def read_integer(raw: object, name: str) -> int:
    """A whole number up to a million, as a number or in digits. Raises Refused ``not_integer``."""
    if isinstance(raw, str) and 0 < len(raw) <= 7 and all("0" <= character <= "9" for character in raw):
        raw = int(raw)
    if isinstance(raw, int) and raw is not True and raw is not False and -1000000 <= raw <= 1000000:
        return raw
    raise Refused("not_integer", name, plain(raw))


def read_pixel(raw: object, name: str) -> float:
    """A coordinate in pixels: an integer or a decimal string."""
    if isinstance(raw, int) and raw is not True and raw is not False:
        number = float(raw) if -1000000 <= raw <= 1000000 else 1e9
    else:
        number = read_decimal(raw, name)
    if not -1e6 <= number <= 1e6:
        raise Refused("out_of_range", name, plain(raw))
    return number


def read_number(raw: object, name: str) -> float:
    """A bare number, as an integer or a decimal string: a share, a factor, a specific gravity."""
    if isinstance(raw, int) and raw is not True and raw is not False:
        return float(read_integer(raw, name))
    return read_decimal(raw, name)


def _taps(name: str, raw: object) -> dict:
    if not isinstance(raw, dict):
        raise Refused("not_taps", name, plain(raw))
    points = {}
    for tap in ("ridge_end", "eave_end", "screw"):
        point = raw.get(tap)
        if not isinstance(point, (list, tuple)) or len(point) != 2:
            raise Refused("not_taps", name + "." + tap, plain(point))
        points[tap] = (read_pixel(point[0], name + "." + tap), read_pixel(point[1], name + "." + tap))
    return points


def _card(name: str, raw: object) -> list:
    if not isinstance(raw, (list, tuple)) or len(raw) != 4:
        raise Refused("not_card", name, plain(raw))
    corners = []
    for position in range(4):
        field, corner = name + "[" + str(position) + "]", raw[position]
        if not isinstance(corner, (list, tuple)) or len(corner) != 2:
            raise Refused("not_card", field, plain(corner))
        corners.append((read_pixel(corner[0], field), read_pixel(corner[1], field)))
    return corners


def plain(raw: object) -> object:
    """What was given, short enough to show; a quantity as ``40 ft``."""
    if isinstance(raw, dict) and isinstance(raw.get("value"), str) and isinstance(raw.get("unit"), str):
        return raw["value"][:40] + " " + raw["unit"][:8]
    if raw is None or raw is True or raw is False or isinstance(raw, int):
        return raw
    if isinstance(raw, str):
        return raw[:60]
    return None


def read_quantity(raw: object, name: str) -> tuple[float, str, str]:
    """``(number, unit, dimension)`` of a quantity, or of a bare count, whose unit is empty."""
    if isinstance(raw, dict):
        return parse(raw, name)
    return float(read_integer(raw, name)), "", "count"
