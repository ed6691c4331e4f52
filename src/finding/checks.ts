// The closed list of what can be found: every check's name, its severity, and the page on it that
// `carryover explain` shows. Names are never renamed or reused.

export type Severity = 'error' | 'warning' | 'note';

export interface CheckPage {
  readonly severity: Severity;
  readonly meaning: string;
  readonly source: string;
  readonly remedy: string;
}

const CONTRACT = 'How carryover files are written (README, "The folder" and "All keys").';
const COMMON_PRACTICE = 'Common practice, no source.';

function error(meaning: string, remedy: string, source = CONTRACT): CheckPage {
  return { severity: 'error', meaning, source, remedy };
}

function warning(meaning: string, remedy: string, source = COMMON_PRACTICE): CheckPage {
  return { severity: 'warning', meaning, source, remedy };
}

function note(meaning: string, remedy: string, source = COMMON_PRACTICE): CheckPage {
  return { severity: 'note', meaning, source, remedy };
}

export const CHECKS = {
  // The file as a whole
  'file-unreadable': error(
    'A file is there but cannot be read.',
    'Look at its permissions, or put it back from version control.',
  ),
  'file-linked': error(
    'A file is a link to another place. What a link points to can change without the folder changing.',
    'Copy the file itself into the folder.',
  ),
  'file-too-big': error(
    'A file is larger than any plan or picture needs: 1 MiB for YAML, 5 MiB for a picture.',
    'Split the file, or save the picture smaller.',
  ),
  'file-not-utf8': error(
    'A file is not saved as UTF-8 text.',
    'In the editor choose "save with encoding" and UTF-8.',
  ),
  'file-too-deep': error(
    'Brackets or indents nest more than 32 deep.',
    'Look for a bracket that was never closed.',
  ),
  'file-too-long': error(
    'A file has more words and signs (50,000) or more keys in one place (2,000) than a plan can need.',
    'Split it into several files.',
  ),
  'file-empty': error('A file has nothing in it.', 'Fill it, or delete it.'),
  'hidden-character': error(
    'A file holds a character that does not show, or that turns the direction of the text around it. What is printed could differ from what is seen.',
    'Delete the character; typing the line anew is the easiest way.',
  ),
  'tab-indent': error(
    'A tab stands where only spaces can tell what belongs to what.',
    'Put spaces in its place; most editors can do it for the whole file.',
  ),
  'yaml-broken': error(
    'The text cannot be taken apart into keys and values.',
    'Look at the line and the one before it: a missing colon, quote or bracket, or an indent that does not fit.',
  ),
  'yaml-feature': error(
    'Anchors (&), references (*), merge keys (<<), tags (!) and directives (%) are not used here: a plan is read by people, and one line must not change because another did.',
    'Write the value out where it is needed. If it was meant as text, put quotes round it.',
  ),
  'several-documents': error(
    'A file holds more than one document, parted by --- or ended by ....',
    'Make a file of each.',
  ),
  'text-cut-off': error(
    'A sentence would be cut off, split, or read as something else than text, and the sheet would say less than was written.',
    'Put double quotes round the sentence, as the message shows.',
  ),
  // Keys and words
  'unknown-key': error(
    'A key is not known at this place. It would be left out silently, and a dose or a stop rule with it.',
    'Correct the key, or move it to where it belongs.',
  ),
  'duplicate-key': error('The same key stands twice in one place.', 'Delete one of the two.'),
  'missing-key': error('A key that is needed is not there.', 'Add it, as the message shows.'),
  'empty-value': error('A key has nothing after it.', 'Write its value, or delete the key.'),
  'wrong-kind': error(
    'A list, a single value or a group of keys stands where another of the three belongs.',
    'Write it in the form that the message shows.',
  ),
  'unknown-word': error(
    'A word is not one of those that this key takes.',
    'Choose one of the words that the message lists.',
  ),
  'bad-id': error(
    'An id has signs that an id cannot have.',
    'Use small letters, digits and hyphens for ids; letters, digits and hyphens for codes.',
  ),
  'id-differs': error(
    'The id inside a file is not the name of the file. One of the two was forgotten in copying, and sheets could be mixed up.',
    'Make them the same.',
  ),
  'duplicate-exercise': error(
    'Two exercise files have the same id.',
    'Give one of them another name.',
  ),
  'duplicate-plan': error(
    'Two plans have the same code (small and capital letters count as the same).',
    'Give one of them another code.',
  ),
  'duplicate-session': error(
    'Two sessions of a plan have the same name.',
    'Give one of them another id.',
  ),
  'duplicate-item': error(
    'The same exercise comes twice in a session under one id, so that a note or a change could mean either.',
    'Give one of them an id of its own: as: second-round.',
  ),
  'duplicate-level': error(
    'Two levels of an exercise have the same id.',
    'Give one of them another id.',
  ),
  'duplicate-entry': error('Two from_week entries are for the same week.', 'Write them as one.'),
  'unknown-exercise': error(
    'A plan uses an exercise that the library does not have.',
    'Correct the id, or write the exercise.',
  ),
  'unknown-level': error(
    'A plan uses a level that its exercise does not have.',
    'Correct the id, or add the level to the exercise.',
  ),
  'unknown-muscle': error(
    'A muscle is not in the vocabulary.',
    'Correct it, or add it under words: muscles: in practice.yaml.',
  ),
  'unknown-kit': error(
    'A piece of kit is not in the vocabulary.',
    'Correct it, or add it under words: kit: in practice.yaml.',
  ),
  'unknown-position': error(
    'A position is not in the vocabulary.',
    'Correct it, or add it under words: positions: in practice.yaml.',
  ),
  'unknown-demand': error(
    'A demand is not in the vocabulary.',
    'Correct it, or add it under words: demands: in practice.yaml.',
  ),
  'unknown-concern': error(
    'A concern is not in the vocabulary.',
    'Correct it, or add it under words: concerns: in practice.yaml.',
  ),
  'unknown-practitioner': error(
    'A plan is signed by someone whom practice.yaml does not name.',
    'Correct the id, or add it under practitioners: in practice.yaml.',
  ),
  'unknown-check': error('There is no check of this name.', 'Choose one from "carryover explain".'),
  'unknown-language': error(
    'There is no words pack for this language.',
    'Choose another language, or put a pack in templates/words/.',
  ),
  'translation-missing': error(
    'A sheet is to be in another language than the practice, and something on it has no words in that language: the plan itself, an exercise, or what the practice says. The sheet would be in two languages.',
    'Write the words that the message names: a plan in the language of its sheet, with handout_language; an exercise in a file beside it, such as heel-raise.es.yaml; the practice under in_language: in practice.yaml.',
  ),
  'unknown-band': error(
    'A band is not in the list of the practice.',
    'Write it as bands: in practice.yaml does, or add it there.',
  ),
  // Quantities
  'unit-missing': error(
    'A bare number stands where a unit belongs. 30 could be seconds or minutes.',
    'Write the unit after the number.',
  ),
  'unit-unknown': error(
    'A unit is not one that is read here.',
    'Use s, min or breaths; kg or lb; %.',
  ),
  'decimal-comma': error(
    'A digit, a comma and a digit: 2,5 could be two and a half or a list of two.',
    'Write a decimal with a point, and a space after a comma in a list.',
  ),
  'range-reversed': error('A range has its larger number first.', 'Put the smaller number first.'),
  'not-a-count': error(
    'A part of a whole stands where things are counted.',
    'Write a whole number.',
  ),
  'number-unclear': error(
    'A number is written in a way that other programs read differently (08, 0x10, 1e3, 1_000).',
    'Write it in plain digits.',
  ),
  'out-of-range': error(
    'A number is below or above anything possible here.',
    'Correct the number.',
  ),
  'not-understood': error(
    'A quantity is not written in a form that is read here.',
    'Write it as the message shows.',
  ),
  'not-a-date': error('A date is not a day of the calendar.', 'Write year-month-day: 2026-10-05.'),
  // Doses
  'dose-two-shapes': error(
    'A dose says how much in two ways at once, so that nobody can tell which holds.',
    'Keep reps with hold and move, or reps with tempo, or time.',
  ),
  'dose-without-shape': error(
    'A dose does not say how much: no reps, hold, tempo or time.',
    'Add one of them to the level or the exercise.',
  ),
  'dose-takes-no-time': error(
    'A repetition takes no time at all, so the session could not be timed.',
    'Give it a move, a hold or a tempo above 0 s.',
  ),
  'dose-reps-over-time': error(
    'reps are put over a dose that is timed: it would ask for that many whole bouts of the time.',
    'Give time, hold, move or tempo in the same place.',
  ),
  'dose-sets-and-list': error(
    'reps is a list with a number for each set, and sets says something else.',
    'Leave sets out, or write the list anew.',
  ),
  'circuit-sets': error(
    'In a circuit the rounds say how often each exercise comes; sets, or a number for each set, would say it twice.',
    'Take sets out of the item, or rounds out of the part.',
  ),
  'one-rep-max-missing': error(
    'A load is a share of the one-repetition maximum, and the plan does not say what that is.',
    'Add one_rep_max: {exercise: 40 kg} to the plan.',
  ),
  // Sides
  'sides-not-each': error(
    'sides, only or order is written where the level in force is not done one side at a time.',
    'Take it out, or choose a level with sides: each.',
  ),
  'side-unclear': error(
    'only: affected or only: other names no side, because the plan says that no side, or both, are affected.',
    'Write only: left or only: right, or correct affected.',
  ),
  // Growth
  'dial-idle': error(
    'A dial of a climb has nothing to move: the dose lacks its key, or is at or past its end already.',
    'Correct the dial or the dose, or take the dial out.',
  ),
  'dial-unclear': error(
    'A dial of a climb is written in a way that cannot be followed.',
    'Write it as the message shows.',
  ),
  'weeks-unclear': error(
    'weeks: 6 as a window could mean "in week 6" or "for 6 weeks".',
    'Write 6-6 or 1-6.',
  ),
  'weeks-outside': error(
    'Weeks lie outside the plan.',
    'Correct the weeks, or the length of the plan.',
  ),
  'weeks-overlap': error('Two windows of weeks overlap.', 'Write them as one.'),
  'window-missing': error(
    'start_when prints a condition with a date, and without weeks there is no date.',
    'Add weeks: the estimate that the numbers use.',
  ),
  // Plans
  'schedule-unclear': error(
    'A session has no days, or more than one way of giving them.',
    'Keep exactly one of days, days_a_week, every, as_needed.',
  ),
  'visits-order': error(
    'The dates of the visits do not ascend.',
    'Put the visits in order of date.',
  ),
  'starts-missing': error(
    'From the second visit on, the plan has to say when week 1 began: the first visit no longer tells.',
    'Add starts: and the date of the first day of week 1.',
  ),
  'next-visit-early': error('The next visit is not after the last one.', 'Correct next_visit.'),
  'pain-ranges': error(
    'The three pain ranges leave a gap or overlap, so that a number on the scale has no answer or two.',
    'Let them cover 0 to 10: 0-3, 4-5, 6-10.',
    'No standard range exists; the ranges in use differ (reference: Thomeé 1997; Silbernagel 2007).',
  ),
  'stop-rule-missing': error(
    'The rules for stopping, or for calling for help, are not there. No sheet leaves without them.',
    'Fill stop_if and emergency_if in practice.yaml.',
    'Duty of care; common practice.',
  ),
  // Pictures, people, templates
  'picture-missing': error(
    'A picture is named that is not there.',
    'Correct the path, or put the picture in pictures/.',
  ),
  'picture-unusable': error(
    'A picture lies outside the folder, is a link, is too big, or is not what its name says.',
    'Put a svg, png, jpg or webp of at most 5 MiB in pictures/.',
  ),
  'link-unusable': error(
    'A link is no https address, or is too long for a code on paper that a telephone can read.',
    'Write the whole address as the browser shows it, from https:// on. Leave out what follows a "?" if the page opens without it.',
  ),
  'private-file-tracked': error(
    'people.yaml or handouts/ is under version control: names would go wherever the folder goes.',
    'Take it out with "git rm --cached" and list it in .gitignore. What was committed stays in the history.',
  ),
  'template-broken': error(
    'A template of the practice cannot be used.',
    'Correct it, or delete it to use the shipped one.',
  ),
  'words-missing': error(
    'A words pack lacks a sentence or has one that cannot be filled in.',
    'Add it; the English pack shows each.',
  ),
  // Handouts, with `check --handouts`
  'handout-missing': error(
    'A plan has no sheet, or not all of its pages.',
    'Run "carryover build".',
    'Common practice: what is handed out is what the plan says.',
  ),
  'handout-extra': error(
    'A sheet belongs to no plan that could be built.',
    'Run "carryover build": it moves the sheet to handouts/outdated/.',
    'Common practice: what is handed out is what the plan says.',
  ),
  'handout-stale': error(
    'A sheet is not what its plan, exercises and settings say now.',
    'Run "carryover build".',
    'Common practice: what is handed out is what the plan says.',
  ),
  'handout-edited': error(
    'A sheet was changed by hand after it was built, so that no plan answers for it.',
    'Put the change into the plan, and run "carryover build".',
    'Common practice: what is handed out is what the plan says.',
  ),
  'pdf-not-made': error(
    'The browser made no PDF of a sheet, or one without page numbers. The pages themselves are built.',
    'Let CHROMIUM name another Chromium-family browser of version 131 or later, or open the page in any browser and print it.',
    'Common practice: every printed page tells its sheet and its place in it.',
  ),
  // The register of handovers
  'handover-uncommitted': error(
    'A sheet is to be handed over, and something that it is made from is not committed: the register would name a commit that says something else than the sheet.',
    'Commit the files that the message names, and hand over again. Other files may stay as they are.',
    'Common practice: the record says what was handed out.',
  ),
  'handover-damaged': warning(
    'A line of handovers.csv cannot be read, or the version that it names cannot, so the handover that it noted is not held against its plan. The other rows count.',
    'Put the line back as version control has it; bring the whole history where this copy lacks it. Rows are added by "carryover handover", and never changed.',
    'Common practice: the record says what was handed out.',
  ),
  'changed-since-handover': note(
    'The words, numbers or pictures of a plan are not those of the sheet that was handed over last: the person has a sheet that the plan does not say any more. Another edition of carryover can word a sheet anew, too.',
    'Hand over the new sheet with "carryover handover", or accept it with the reason.',
    'Common practice: what is handed out is what the plan says.',
  ),
  'editor-ids-old': note(
    'The editor completes the ids that the folder had when it was last told.',
    'Run "carryover init --refresh".',
  ),
  // The plan as a whole: each can be accepted with a reason
  'concern-conflict': warning(
    "An exercise asks something of the body, or takes a position, that one of the person's concerns limits.",
    'Choose another exercise or level, or accept it with the reason.',
    'The limits of each concern are named in the vocabulary; common practice, no source.',
  ),
  'kit-missing': warning(
    'An exercise, or its load, needs something that the person does not have, in some week of the plan.',
    'Choose another exercise or level, or add it to kit under limits: a band by its name, weight for kilograms and pounds. Without kit there, anything is taken to be at hand.',
  ),
  'position-avoided': warning(
    'An exercise takes a position that the plan says to avoid.',
    'Choose another exercise or level.',
  ),
  'outside-bounds': warning(
    'A dose, with all that was laid over it, lies outside what its level calls sensible at either end. In a circuit the rounds count as the sets.',
    'Correct the dose or the climb, or the bounds of the level.',
    "The bounds are those of the practice's own library.",
  ),
  'long-session': warning(
    'A session can take longer, at its high end, than the person has.',
    'Take something out, or raise limits: time.',
  ),
  'side-balance': warning(
    'A muscle gets clearly more sets on one side in a week without a reason that the plan gives. Counted at the middle of a range.',
    'Do both sides, or give the reason: affected, only: other, or the why of a side override.',
    'Setting off_by (25 %). Common practice, no source.',
  ),
  'only-against-affected': warning(
    'An item is done on one side only, and that is not the affected side of the plan. After a copy, or a slip of the pen, it may be the wrong one.',
    'Write only: affected for the affected side. If the other one is meant, write only: other, which cannot be a slip.',
  ),
  'side-word': warning(
    'The title of a plan names the side that the plan does not call affected, and not the one that it does. One of the two was left from another plan, or is a slip. Only English titles are looked at.',
    'Look at the record, and correct the title or affected.',
  ),
  'sharp-rise': warning(
    "A muscle's weekly sets rise by more than half, and more than 2 sets, against the last week that was not easy. A start from nothing is no rise.",
    'Spread the rise over more weeks.',
    'Settings rise (50 %) and sets (2). Common practice, no source.',
  ),
  'warm-up-first': note(
    'In a session of three or more exercises, strength comes before anything that warms up or loosens.',
    'Put a warm-up or mobility exercise, or a part of that name, first.',
    'Setting items (3). Common practice, no source.',
  ),
  'stretch-before-strength': warning(
    'A muscle is stretched for a minute or more before it is trained in the same session; that can lower what it does for a while.',
    'Move the stretch after the strength work. Do not shorten it. With lively movement between the two the effect was not clear.',
    'Behm DG, Blazevich AJ, Kay AD, McHugh M. Appl Physiol Nutr Metab 2016;41(1):1-11: 60 s or more a muscle, -4.6 %. Setting hold (60 s).',
  ),
  'limb-unlikely': warning(
    'An exercise calls its sides by the leg, and all the muscles that it names are of the arm, or the other way round. The sheet would say "left leg" of an exercise for the arm.',
    'Correct limb, or the muscles.',
    'The groups of muscles are those of the vocabulary.',
  ),
  'translation-differs': warning(
    'A text in another language has another number of sentences than its original, other numbers in it, or stands where the original has none. Something may have been left out, or be out of date.',
    'Hold the two against one another, and correct the one that is wrong.',
  ),
  'translation-needless': warning(
    'There are words in another language that no sheet can ever print: they are in the language of the practice itself.',
    'Delete them, or correct the language.',
  ),
  'placeholder-left': warning(
    'A file still says "(replace this)", or what "carryover init" put there to be replaced, and it would stand so on every sheet.',
    'Write what holds for your practice in its place.',
  ),
  'looks-personal': warning(
    'Something in the folder looks like a name, a date of birth, a telephone number or an e-mail address.',
    "Use the person's code; names belong in people.yaml alone. What was committed stays in the history.",
    'Settings digits (7) and years (15). Common practice, no source.',
  ),
  'gate-out-of-reach': warning(
    'A level is left only at a number that its dose and climb never reach in this plan.',
    'Let the climb reach it, or change move_on_when, at the item too.',
  ),
  'gate-above-stop': error(
    'A level may be left at a pain at which the same plan says to stop. Both sentences would stand on one sheet.',
    'Write a pain_at_most below the range to stop at, in the exercise or in a move_on_when of the item.',
    'The ranges are those of the plan, or of the practice.',
  ),
  'start-before-visit': warning(
    'Week 1 of a plan begins before its first visit, so that the sheet starts in a later week than the first.',
    'Correct starts. If the person began before, elsewhere, accept it with that reason.',
  ),
  'dates-unlikely': warning(
    'Week 1 of a plan begins after the next visit, which would have nothing to look back on.',
    'Correct starts or next_visit.',
  ),
  'sheet-runs-out': note(
    'The plan ends more than a week before the next visit, and the sheet does not say what to do in between.',
    'Correct next_visit, or let the plan last longer.',
    'Setting days (7). Common practice, no source.',
  ),
  'looks-copied': note(
    "A plan has the visits and goals of another person's plan, word for word: it was copied, and what was found in one person may stand in the record of another. Looked for in a check of the whole folder.",
    'Write what holds for this person, or start plans with "carryover new plan <code> --from <code>", which leaves these blank.',
  ),
  'entry-changes-nothing': note(
    'A from_week entry changes nothing: the level, the dose or the days that it names hold already.',
    'Write what is to change in that week, or take the entry out. One that starts a climb anew does change something.',
  ),
  'reading-grade': warning(
    'An exercise, or the sheet of a plan as printed, reads above the grade of school that is asked for. Judged by Flesch-Kincaid; by SMOG too where there are 30 sentences, for which it was made. It names the sentences that weigh most. Each entry of a list counts as a sentence; headings, names, dates and the page to tick are not counted; a figure is one short word. English only: nothing is said of another language.',
    'Write shorter sentences and shorter words. A word that cannot be avoided goes into practice.yaml, as words: {plain: [physiotherapist]}, and counts as short.',
    'Setting above (6): the sixth grade or below (AMA; Weiss BD. Health literacy: a manual for clinicians, 2003, 2007). Kincaid JP et al. Research Branch Report 8-75, 1975; McLaughlin GH. J Reading 1969;12(8):639-646. Counted as in Flesch R. How to Write Plain English, 1979.',
  ),
  'trade-word': note(
    'A text that is printed has a word of the trade, with no everyday word beside it. English only.',
    'Say it in everyday words, or put those in brackets after it. A word that your people know goes into practice.yaml, as words: {plain: [hamstring]}.',
  ),
  'easy-week-empty': note(
    'An easy week eases nothing of what is done in it.',
    'Name sets, reps, hold or time under easy_weeks, whichever its doses have, or drop the week. Half of one set is still one set.',
  ),
  'joint-range': warning(
    'A figure draws a joint further than it normally goes. What is drawn is what a person tries to do.',
    'Draw less, unless this exercise means it; then accept it in the plan.',
    'The larger of two published values: American Academy of Orthopaedic Surgeons 1965, as in Norkin CC, White DJ, Measurement of Joint Motion, app. A; US 38 CFR 4.71a, Plates I and II. Spine, foot and shoulder blade: from memory. Chin, and the arm across the body: common practice, no source.',
  ),
  'joint-impossible': error(
    'A figure draws a joint further than any goes: more than 25 degrees beyond its normal range.',
    'Look for a lost minus sign, or a digit too many. "carryover explain joint-range" names the sources of the normal ranges.',
    'Normal ranges as for joint-range; the 25 degrees are common practice, no source.',
  ),
  'pose-unreached': warning(
    'The body of a figure cannot be where it is said to be: with the angles that are given, a hand, a foot or the trunk ends short of what it has to touch, or goes through it.',
    'Leave out one of the angles on the way to it, so that the body finds it itself, or put the hand or foot somewhere else. "carryover figure" shows what comes of it.',
    'Lengths of the body: Drillis R, Contini R, Body Segment Parameters, New York University 1966. Less than 1 cm on a body of 170 cm counts as reached: common practice, no source.',
  ),
  'figure-does-not-fit': warning(
    'Something is written in a figure that has no place in it, such as a wall that nothing touches, or a position that no figure knows. It would be left out without a word.',
    'Write what it belongs to, or delete it.',
  ),
  'accept-settles-nothing': note(
    'An accept names a check that finds nothing where it stands.',
    'Delete it, or move it to the item, part or session that it is about.',
  ),
} as const satisfies Record<string, CheckPage>;

export type CheckName = keyof typeof CHECKS;

export const CHECK_NAMES = Object.keys(CHECKS) as readonly CheckName[];

/** Those that a practice may settle, turn off or make more of. */
export const SETTLED_CHECKS: readonly CheckName[] = CHECK_NAMES.filter(
  (name) => CHECKS[name].severity !== 'error',
);

/** Of those, the ones about the folder or its library: no plan can accept them. */
export const FOLDER_CHECKS: ReadonlySet<CheckName> = new Set([
  'editor-ids-old',
  'placeholder-left',
  'limb-unlikely',
  'handover-damaged',
  'translation-differs',
  'translation-needless',
]);

export function isCheckName(text: string): text is CheckName {
  return Object.hasOwn(CHECKS, text);
}

export function severityOf(check: CheckName): Severity {
  return CHECKS[check].severity;
}
