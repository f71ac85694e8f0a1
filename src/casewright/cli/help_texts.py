"""What `--help` says: each command in a sentence, then in use.

A paragraph that begins with a backspace keeps its lines.
"""

from __future__ import annotations

__all__ = [
    "CHANGED", "CHECK", "CUT", "DEMO", "FORECAST", "LAYOUT", "NEW", "PACKET", "PARTS", "PROGRAM",
    "RECORD", "SETUP", "SURVEY", "VERIFY", "WHY",
]  # fmt: skip

PROGRAM = """From a tape measure in a crooked room to cabinets that fit.

One short text file (the job file) says what you want. Casewright works out every part, hole,
cut, purchase and step from it, proves that the parts go together, and says why any number is
what it is.

Start with:

\b
  casewright new kitchen.toml      a short job file to change to your own
  casewright check kitchen.toml    what is open, what is risky, does it fit
  casewright packet kitchen.toml   the shop packet to print
  casewright record kitchen.toml cut 12 14      what was read, cut or spoiled
  casewright why kitchen.toml upper.bottom.length

Exit codes: 0 clean, 1 findings or open questions, 2 errors in the input, 3 a failed proof.
"""

DEMO = """Work out the demo kitchen and make its packet.

Its job file is put beside the packet, for you to change a number in it and print it again:

\b
  casewright demo
  casewright packet out/demo/kitchen.toml --out out/demo
"""

NEW = """Write a short job file to change to your own. An existing file is never overwritten.

\b
  casewright new kitchen.toml             in inches, on letter paper
  casewright new kitchen.toml --metric    in millimetres, on A4
"""

CHECK = """Say what is wrong, open or risky in a job, and whether its parts go together.

\b
  casewright check kitchen.toml

What is wrong comes with its line, and with what would be right:

\b
  kitchen.toml, line 5, column 9, 33 1/2: a length with a fraction or a
  unit stands in quotes; put quotes round it: "33 1/2"

ASK: a reading is missing, and these parts wait for it. STOP, CARE, NOTE: how much a finding
matters. The last line is the sum.
"""

PARTS = """List every piece with the size to cut it to; with --json its holes and cuts as well.

\b
  casewright parts kitchen.toml
  casewright parts kitchen.toml --json > parts.json
"""

CUT = """Plan the sheets and boards: what to buy, and each cut in order with its setting.

\b
  casewright cut kitchen.toml
  casewright cut --problem sheets.json
  casewright cut --problem sheets.json --json > plan.json
  casewright cut --problem changed.json --last plan.json --cut 1,2

Each setting stands over its cuts; each cut says which piece to take and what it gives:

\b
  11 3/4", table saw, the datum edge against the fence
      4  rip piece 1.6 (50 3/32 x 23 13/16)
         gives 1.7 50 3/32 x 11 3/4; 1.8 50 3/32 x 11 15/16

A bare problem is a file of stock and parts in whole numbers; docs/cutting.md tells its shape.
Ctrl-C ends the search with the best plan so far; a second one quits. With --seconds the plan
depends on how fast the machine is, otherwise it does not.
"""

VERIFY = """Check a plan for a cutting problem, whoever made it, without the solver that made it.

\b
  casewright verify sheets.json plan.json

Sizes, grain, kerf, trims, defects and stock are looked at, the cut trees are followed, and the
steps, where there are any, are made one after the other in thought. Exit code 0: sound. 2: not
sound, each breach in words, or one of the files cannot be read.
"""

PACKET = """Make the shop packet: packet.pdf, and the parts, buy list and hardware as CSV.

\b
  casewright packet kitchen.toml               into out/kitchen
  casewright packet kitchen.toml --out shop    into shop
  casewright packet kitchen.toml --left        no page for what is cut, machined, assembled
  casewright packet kitchen.toml --pages http://192.168.1.20:8417/    labels with codes

Open questions and findings stand on its cover. All of it is written, or nothing: a failed proof
leaves the folder as it was. With --pages each label bears a code: a phone that has joined opens
the part with its camera while `serve --network`, which prints the address, serves the job there. A
packet that is made from the page has them by itself.
"""

LAYOUT = """Fill the walls: up to five layouts that differ in kind, each with its trade.

\b
  casewright layout kitchen.toml
  casewright layout kitchen.toml --run below --accept 2
  casewright layout kitchen.toml --heights --accept 1
  casewright layout kitchen.toml --island middle --accept 1

Of each run that closes against a wall, the cases without a width get one, on a grid of 1/16 in or
1 mm, and the fillers theirs: equal widths, mirrored ones, a case on the middle of a window
(centre under [run.NAME]), as far as they go together. Where nothing fits, it says by how much, and
what would make room. An accepted answer is written into the job file.

An island whose place leaves something open is put where its aisles are kept, as long as it may be,
its middle before its window or range; heights, where floor and ceiling were read, close exactly.
"""


SURVEY = """Say what the readings of the room come to, and print the form to write them on.

\b
  casewright survey kitchen.toml               into out/kitchen/survey.pdf
  casewright survey kitchen.toml --out shop    into shop/survey.pdf

For each wall: the narrowest width, the highest floor, the lowest ceiling; readings that cannot all
be right; what is still missing; and the one further reading that would tell most. The form has a
page for each wall, with its readings in their places and blanks for the missing ones. Without a
[wall.NAME] in the file it is a bare one, to take along. A reading can also be recorded:

\b
  casewright record kitchen.toml reading survey.wall.window.width_1 100 1/8
"""

WHY = """Say why a number is what it is: its formula, and where each part of it comes from.

\b
  casewright why kitchen.toml                        all that can be asked
  casewright why kitchen.toml upper.bottom.length    one number
  casewright why kitchen.toml style.gap              a default of the house
  casewright why kitchen.toml plan.plywood.setting_4

A path that is nearly right gets the nearest ones.
"""

FORECAST = """Say how likely each fit misses its band, and where measuring first is worth it.

\b
  casewright forecast kitchen.toml                    the likeliest to miss first
  casewright forecast kitchen.toml sink.drawer_1      one thing, with all its causes
  casewright forecast kitchen.toml --all

A hold point is a stop before the next cut: what to measure, which readings are a go, which pieces
wait, and how likely they miss without it and with it. It is passed once the reading is recorded.
Exit code 0: none is open; 1: one is. docs/slack.md tells the rest.
"""

RECORD = """Write down what was read, cut or done. Nothing is ever overwritten.

\b
  casewright record kitchen.toml                                   the list
  casewright record kitchen.toml reading sink.width 33 1/16
  casewright record kitchen.toml reading stock.plywood.thickness 0.703
  casewright record kitchen.toml cut 12 14                         by marks, as planned
  casewright record kitchen.toml cut sink.shelf.1 --size "29 3/32 x 22"
  casewright record kitchen.toml machined 12 14
  casewright record kitchen.toml assembled sink                    also finished, hung
  casewright record kitchen.toml spoiled 12 --note "tear-out"
  casewright record kitchen.toml offcut plywood 24 x 18 1/2
  casewright record kitchen.toml minutes 45 sink
  casewright record kitchen.toml note sink the left side is the better face
  casewright record kitchen.toml reading sink.width 33 1/8 --corrects 3f2a91c0
  casewright record kitchen.toml withdrawn 3f2a91c0
  casewright record kitchen.toml --as-of 2026-05-12
  casewright record kitchen.toml --export record.csv
  casewright record kitchen.toml --import phone.jsonl

From then on check, parts, cut, packet and why go by it; --without-record leaves it out. A reading
far from what the other numbers imply is asked about first. docs/record.md tells the rest.
"""

SHEETS = """Say which sheets of a stock go together, and which cases are cut out of which.

\b
  casewright sheets kitchen.toml
  casewright sheets kitchen.toml --accept

Sheets are seldom of one thickness. Chalk a letter on each, read it with a calliper and write
sheets = { a = "0.720", b = "0.703" } under its stock: each case is then cut out of sheets that
are alike, so that one setting does for all its joints. Exit code 0: nothing to sort; 1: there is.
"""

RESOLVE = """Show what stays, what changes and why, and what is impossible now with its remedies.

\b
  casewright resolve kitchen.toml
  casewright resolve kitchen.toml --accept
  casewright resolve kitchen.toml --fewest              as few pieces otherwise as can be
  casewright record kitchen.toml withdrawn 3f2a91c0     take an acceptance back

Compared is what the record says of real things now with what was last accepted, or with the
design. Exit code 0: there is nothing to say yes to; 1: there is. docs/resolve.md tells the rest.
"""

SETUP = """Say how a tool is set for a cut, and what to move when a test piece is off.

\b
  casewright setup kitchen.toml sink.door_left.stile_left.lap_top
  casewright setup kitchen.toml sink.door_left.stile_left.lap_top lap 1/32 proud
  casewright setup kitchen.toml 12.rabbet_back depth 13/32

The first tells the setting and what can be measured; the others bring the move, such as raise the
blade 1/64, and keep the test piece in the record. Exit code 1: there is something to move.
"""

CHANGED = """Say whether pages in the shop are stale, and what differs since they were printed.

\b
  casewright changed kitchen.toml                  since the last packet
  casewright changed kitchen.toml 3f2a91c0dead     since the packet with that fingerprint
  casewright changed kitchen.toml 2026-05-12       since the end of a day

The fingerprint stands at the foot of every page. Each packet that is printed is noted in the
record with the job file as it was. Exit code 0: nothing printed has changed; 1: pages are stale.
"""

SERVE = """Serve the pages of a job: the wall at the desk, the next cut on the phone in the shop.

\b
  casewright serve kitchen.toml              on this machine alone
  casewright serve kitchen.toml --network    phones at home may join, by the code it prints

What you change on a page is written into the job file, comments kept; what you change in an editor
shows on the page. Entries from the shop go into the record. Stop it with Ctrl+C.
"""
