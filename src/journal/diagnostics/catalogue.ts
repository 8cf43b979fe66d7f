/**
 * Every problem Asfound can name. A code is permanent: it is never given to another problem.
 * `title` heads the row of the table in DEVELOPERS.md; `meaning` is what a restorer reads there.
 *
 * A1 files · A2 YAML · A3 fields and values · A4 references · A5 whereabouts · A6 bags, items and
 * milestones · A7 decisions · A8 hours and money · A9 pictures, papers and prose
 */
import type { Severity } from './diagnostic.ts';

interface Row {
  readonly severity: Severity;
  readonly title: string;
  readonly meaning: string;
}

const error = (title: string, meaning: string): Row => ({ severity: 'error', title, meaning });
const warning = (title: string, meaning: string): Row => ({ severity: 'warning', title, meaning });

export const CATALOGUE = {
  A101: error('No journal here', 'The folder has no journal.yaml, so it is not a journal.'),
  A102: error('Not UTF-8', 'The file holds bytes that are not UTF-8 text. Save it again as UTF-8.'),
  A103: error('Empty file', 'The file has nothing in it.'),
  A104: error('File too large', 'A note or catalogue is over 1 MB, which no evening fills. It is not read.'),
  A105: error('Path climbs out', 'A path leads out of the journal folder, by `..` or because it is absolute.'),
  A106: error('Link leads out', 'A symbolic link leads out of the journal folder. It is not followed.'),
  A107: error('Cannot be read', 'The operating system would not give the file up.'),
  A108: warning('Byte order mark', 'The file begins with a byte order mark. It does no harm here, but other programs stumble on it.'),
  A109: error('Two notes claim one id', 'Two notes make the same session id.'),
  A110: warning('File not expected here', 'A file lies where only notes or catalogues are read, and is left alone.'),
  A111: error('Control character', 'The text holds a character that steers machines and that nobody can see.'),
  A112: error('Two names are one', 'Two files have names that are one on many disks: the same letters, or the same but for capitals.'),

  A201: error('YAML cannot be understood', 'The YAML breaks its own rules at this place; the rest of the file may be affected.'),
  A202: error('Tab in the indentation', 'YAML is indented with spaces only.'),
  A203: error('Duplicate key', 'One key stands twice in the same mapping.'),
  A204: error('Anchor or alias', 'Anchors and aliases are not part of the format: write the value out.'),
  A205: error('No front matter', 'A note begins with a line `---`, its fields, and another line `---`.'),
  A206: error('Front matter not closed', 'The opening `---` has no second `---` line.'),
  A207: error('Not a mapping', 'Fields were expected (`name: value`), something else stands there.'),
  A208: error(
    'Value not quoted',
    'A mark in the value means something else to YAML: a comma inside braces, a colon, a reserved mark. Put the value in double quotes.',
  ),

  A301: error('Unknown field', 'The format has no field of this name here.'),
  A302: error('Field missing', 'A field that must be there is not.'),
  A303: error('Wrong kind of value', 'The value is of another kind than the field takes.'),
  A304: error('Not one of the words', 'The field takes one of a few words.'),
  A305: error('Not a date', 'A date is written YYYY-MM-DD and must be in the calendar.'),
  A306: error('Not a length of time', 'Time is a clock range (19:10-21:40) or a length (90m, 1h30m, PT1H30M).'),
  A307: error('Not an amount of money', 'An amount is digits with at most the decimals of its currency.'),
  A308: error('Not a quantity', 'A quantity is a number and a unit.'),
  A309: error('Wrong dimension', 'The unit measures something else than what is asked for.'),
  A310: error('Not a count', 'A count is a whole number from 1.'),
  A311: error('Not an id', 'An id is lower-case letters, digits and single hyphens.'),
  A312: error('Unknown currency', 'The currency is not an ISO 4217 code.'),
  A313: error('Rate of exchange', 'A rate of exchange must be more than zero.'),
  A314: error('Tax out of range', 'Tax is from 0 to 100 %.'),
  A315: error('Unknown time zone or locale', 'The time zone or locale is not known to this system.'),
  A316: error('Not a percentage', 'A percentage is written `20%`.'),
  A317: error('Date and folder disagree', 'The note lies in a folder or file named for another date than it carries.'),

  A401: error('Unknown part', 'No part of that id is in the catalogue.'),
  A402: error('Unknown person', 'Nobody of that id is in journal.yaml.'),
  A403: error('Unknown subsystem', 'No subsystem of that id is in journal.yaml.'),
  A404: error('Unknown milestone', 'No milestone of that id is in journal.yaml.'),
  A405: error('Unknown consumable', 'No consumable of that id is in consumables.yaml.'),
  A406: error('Unknown store', 'No store of that name is in journal.yaml.'),
  A407: error('Unknown position', 'The id is not of a part that makes a position.'),
  A408: error('Unknown part or subsystem', 'Neither a part nor a subsystem has that id.'),
  A409: error('Unknown session', 'No note has that session id or date.'),
  A410: error('One id, two meanings', 'Two catalogue entries claim the same id.'),
  A411: warning(
    'Unknown hazard statement',
    'The code is in neither the GHS nor the CLP Regulation as listed here. It is shown as written.',
  ),
  A412: error('Corrects itself or a later note', 'A note corrects a session that was before it.'),
  A413: error('Parts in a circle', 'A position lies in a part that lies, in the end, in itself.'),
  A414: error('In a position of several', 'What other positions are places in holds one.'),

  A501: error('Not fitted', 'The action needs the part on the vehicle, and it is not.'),
  A502: error('Position taken', 'The position already holds its full count.'),
  A503: error('Fitted elsewhere', 'The part is on the vehicle, at a position where it already is or at another one.'),
  A504: error('More than there are', 'The count is more than are in the state the action needs.'),
  A505: error('Part is gone', 'The part was scrapped, sold, given or lost before.'),
  A506: error('Part is not here', 'The part is missing, out with a firm, or not yet here.'),
  A507: error('Already here', 'Only a part that is not yet here can be acquired or made.'),
  A508: error('Not out', 'Only a part that is out with a firm can be returned.'),
  A509: error('Still fitted', 'The action needs the part off the vehicle.'),
  A510: error('No destination', 'The action must say where the part goes, or how it went.'),
  A511: error('Not in that place', 'The part is not where `from` says.'),
  A512: error('Catalogue overfills the position', 'As found, more is fitted than the position takes.'),
  A513: error('Destination without a move', '`to` says where the part went, and no action of the entry takes it there.'),
  A514: error('Acquired on two days', 'The catalogue says that the part came on another day than the note does.'),
  A515: error('Nothing to fit it into', 'The position is a place in another part, and that part is not here, or is several.'),
  A516: error('Fitted into itself', 'A part cannot be in itself, or in what is in it.'),
  A517: error('Which of them', 'The parts of the lot can be told apart, and the count leaves a choice.'),
  A518: error('No such number', 'The lot is not numbered, or has no part of that number.'),
  A519: warning('Originals go with it', 'A part goes for good, and originals that are in it go along.'),
  A520: error('Two notes the wrong way round', 'What cannot be in several entries could be if two notes had each other’s dates.'),
  A521: error('Entry doubled', 'The same entry stands twice in a note, and what it says cannot be done twice.'),
  A522: error('Said of no action', 'A field says something of an action that the entry does not have.'),

  A601: error('Bag used twice', 'A bag is filled that is full: it must be emptied first.'),
  A602: error('Bag emptied but not filled', 'The bag was never filled, or only later.'),
  A603: error('Bag emptied twice', 'The bag was emptied before.'),
  A604: error('Bag cannot take more', 'A part goes into a bag that the same note describes, or that is not full: it then opens it.'),
  A605: warning('Part left in an emptied bag', 'The bag was emptied and no action says where this part of it went.'),
  A606: error('Unknown bag', 'No note fills a bag of that number.'),
  A607: error('Item opened twice', 'An open item of that id exists already.'),
  A608: error('Item closed but not open', 'The item was never opened, or only later.'),
  A609: error('Item closed twice', 'The item was closed before.'),
  A610: error('Unknown item', 'No note opens an item of that id.'),
  A611: error('Milestone with a gate open', 'Items due before the milestone are open, and the note does not own up to them.'),
  A612: error('Milestone reached twice', 'The milestone was reached before.'),
  A613: error('Admission without a reason', '`with-open` needs `because`.'),
  A614: warning('Admitted item is not open', '`with-open` names an item that was not open or not due before the milestone.'),
  A615: error('Temporary measure without an end', 'A temporary measure names the milestone it must be undone before.'),
  A616: warning('Milestone before an earlier one', 'A milestone is reached while one that stands before it is not.'),
  A618: warning('Bag with nothing of what it names', '`off` of a bag names a part that the note does not take off.'),
  A619: error('Handed over to its keeper', 'The vehicle passes to somebody who has it already.'),
  A620: error('Cannot go or stay', 'A hand-over names a part that is on the vehicle, not here, or named as going and as staying.'),
  A621: error('A price, and not sold', 'Only what was sold has a price.'),
  A617: error('Due before what is past', 'An item is opened before, or put off to, a milestone that was reached already.'),

  A701: warning(
    'Decision against the facts',
    'What is on the vehicle is ruled out by the decision in force, or what was to be kept is gone.',
  ),
  A702: error('Replaced with nothing known', '`with` goes with the verdict `replace`.'),
  A703: error('Decision on more than there are', 'The decision speaks of more than the position holds.'),
  A704: warning('Decision without a reason', 'The reason is what is forgotten first. Write `because`.'),

  A801: error('Date in the future', 'The date is later than today.'),
  A802: error('Before the vehicle arrived', 'The date is before the vehicle arrived.'),
  A803: error('Clock ranges overlap', 'One person cannot work twice at the same time.'),
  A804: error(
    'More than a day holds',
    'One person has more hours on one day than it holds: 24, or one less or more where the clocks change.',
  ),
  A805: error('More used than there is', 'The consumable has less on the shelf than is used.'),
  A806: error('Bill does not add up', 'The total of the bill is not the sum of its lines.'),
  A807: error('Split of nothing', 'The weights of a split add up to nothing.'),
  A808: error('Negative amount', 'Only a refund is negative.'),
  A809: error('Clock time does not exist', 'The clocks went forward over this time.'),
  A810: error('No rate yet', 'The person has no rate on this date.'),
  A811: error('More came back than was paid', 'A refund is more than what is left of what its purchase cost.'),
  A812: error('No such purchase', 'The note that a refund names tells of no such purchase.'),
  A813: error('Consumable bought as something else', 'A consumable goes onto its shelf and cannot be bought as a part, a tool or work.'),
  A814: error('Mark-up out of range', 'Mark-up is from 0 to 1000 %.'),
  A815: error('Sold, but not there to be sold', 'A part that is sold is on the vehicle, or was sold before.'),
  A816: warning('Sold, but still here', 'A part is sold, and no action says that it went.'),
  A817: warning('A bill twice', 'Two bills have the same paper, seller and total.'),
  A818: warning('Closed statement against the notes', 'A statement that was closed charged something else than the notes now tell.'),
  A819: error('Closed statement edited', 'The lines of a closed statement do not make what it charges.'),
  A820: error('Two statements of one number', 'Two closed statements have the same number.'),
  A821: error('No money here', 'There is an amount, and journal.yaml has no currency.'),
  A822: error('Too much for rounding', 'A bill is rounded by one whole unit of its currency at most, or by a hundredth of its lines.'),
  A823: warning('Longer than anybody works', 'A clock range comes to more than 16 hours at a stretch.'),

  A901: error('Picture not there', 'The picture is neither beside the note nor at that path.'),
  A902: error('Paper not there', 'The paper is neither beside the note nor in papers/.'),
  A903: error('Link to nothing', 'A link in the prose names something the journal does not have.'),
  A904: warning('Picture without words', 'The picture has neither a caption nor an alternative text.'),
  A905: warning('Clip not there', 'The clip is named as a file of the journal, and is not there.'),
  A906: error('Not a time in a clip', 'A mark is minutes:seconds or hours:minutes:seconds.'),
  A907: error('Picture cannot be used', 'The file is empty, cut short, too large, or not the kind its name says.'),
  A908: warning('Picture of another day', 'The picture was taken on another day than the session.'),
  A909: error('Paper cannot be used', 'The PDF is empty, cut short, or is something else than its name says.'),
  A910: warning(
    'Paper published as it is',
    'The PDF is signed, locked, odd or very large, unpacks to more than any paper, or holds files, so what it says of who made it cannot all be taken out.',
  ),
  A911: error('Clip cannot be used', 'A clip that lies in the journal is a film by its bytes and by its ending; this is none.'),
  A912: warning(
    'Film published as it is',
    'The film is of another kind than MP4 and MOV, or odd, or has a track of text, or one of data that cannot be followed, so what its camera wrote cannot all be taken out.',
  ),
  A913: error('Drawing cannot be used', 'A drawing is an SVG that says how large it is, and is not nested without end.'),
  A914: warning('Shape of nothing', 'A shape in a drawing is named for a place that the vehicle does not have.'),
  A915: error('Not a place in a picture', 'A place is x,y or x,y,w,h in per cent of the picture.'),
  A916: error(
    'Prose cannot be read',
    'The prose of the note is over 128 kB, nested too deep, made of marks, or without blanks; the parser would not come to an end.',
  ),
  A917: warning('Paper without its picture', 'The first page of the PDF has no size, or takes too long or too much memory to be drawn.'),
} as const satisfies Record<string, Row>;

export type Code = keyof typeof CATALOGUE;
