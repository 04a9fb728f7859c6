"""The digests that tie the report to its evidence, and the room for its seals."""

from typing import Any

from inspect_app.evidence.trust import key_digits
from inspect_app.report.pages.look import BODY, CODE, SMALL
from inspect_app.report.pages.page import Page
from inspect_app.report.pages.paragraph import Paragraph
from inspect_app.report.pages.row import Heading, Row, space, together
from inspect_app.report.pages.seal_room import SealRoom
from inspect_app.report.pages.text import line

ON_ONE_PAGE = 24  # rows


def hashes_section(page: Page, number: str, digest: str) -> list[Any]:
    """Log head, server key, every key's chain, definitions; at the end the seals."""
    told = page.contents["hashes"]
    story: list[Any] = [Heading(page.say("chapter.hashes"), "hashes", number=number)]
    story.append(Row("", Paragraph(page.say("hashes_say"), SMALL), 5))
    story.append(Row(page.say("contents_digest"), Paragraph(digest, CODE)))
    story.append(
        Row(
            page.say("log_head"),
            Paragraph(
                page.say("log_head_says", seq=line(told["head_seq"], 20), receipt=line(told["head_receipt"], 60)),
                CODE,
            ),
        )
    )
    story.append(Row(page.say("server_key"), Paragraph(line(told["server_kid"], 60), CODE)))
    story.append(Row(page.say("server_print"), Paragraph(line(key_digits(told["server_kid"]), 100), CODE)))
    story.append(Row(page.say("fingerprint"), Paragraph(line(told["fingerprint"], 100), CODE), 6))
    for one in told["keys"]:
        name = line(one["person"], 60) if one["person"] else page.say("key_of_nobody")
        state = page.say("chain_whole") if not (one["gaps"] or one["forks"] or one["broken"]) else page.say(
            "chain_not_whole", gaps=len(one["gaps"]), forks=one["forks"], broken=one["broken"])  # fmt: skip
        story.append(
            Row(
                name,
                Paragraph(
                    page.say(
                        "key_says",
                        kid=line(one["kid"], 50),
                        count=one["count"],
                        head=line(one["head"], 50),
                        state=state,
                    ),
                    CODE,
                ),
            )
        )
    for one in told["definitions"]:
        label = f"{line(one['id'], 40)} {line(one['version'], 8)}"
        story.append(Row(label, Paragraph(line(one["digest"], 60), CODE)))
    seal: list[Any] = [
        Heading(page.say("seal_head"), "seal", 1),
        Row("", Paragraph(page.say("seal_says"), BODY), 6),
        SealRoom(page),
    ]
    if len(story) <= ON_ONE_PAGE:  # what is compared letter by letter is not torn apart
        story = [together(story)]
    return [*story, space(8), together(seal)]
