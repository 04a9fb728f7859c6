"""Every attack by its name; each takes a fresh ``Small`` and gives the files of the package."""

from tests.verify_page.attack import Attack
from tests.verify_page.attacked_draws import DRAWS
from tests.verify_page.attacked_files import FILES
from tests.verify_page.attacked_record import RECORD

ATTACKS: dict[str, Attack] = {**RECORD, **FILES, **DRAWS}
