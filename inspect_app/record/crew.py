"""The crew a lot names: letters' size and blanks apart, so that "Crew  a" is no crew beside "crew A".

Of letters the 26 of ASCII alone: the phone's interpreter knows no others by their case.
"""

CAPITALS = "ABCDEFGHIJKLMNOPQRSTUVWXYZ"
BLANKS = "\t\n\v\f\r\u00a0\u2007\u2009\u200b\u202f\u3000"
SMALL = "abcdefghijklmnopqrstuvwxyz"


def crew_of(lot: dict) -> str:
    words = "".join([" " if letter in BLANKS else letter for letter in lot["crew"]]).split(" ")
    told = " ".join([word for word in words if word])
    return "".join([SMALL[CAPITALS.find(letter)] if letter in CAPITALS else letter for letter in told])
