// The handout as finished words, in the order in which it is printed (the contract's section 6).
// Every field is a sentence, a list of sentences or a picture; nothing here is still to be worded.
// Left to others: the wording (worded-sheet), how it looks, the sheet number, the short day.
import type { Picture } from '../../model/exercise.ts';

/** The sheet for one person, worded. */
export interface SheetView {
  /** BCP 47, as in the words pack. */
  readonly language: string;
  readonly direction: 'ltr' | 'rtl';
  /** The plan's code. */
  readonly plan: string;
  readonly head: HeadView;
  /** What it is for. Null where the plan has no goals. */
  readonly goals: SentencesView | null;
  /** What is new since the sheet before. Null where none is known. */
  readonly news: SentencesView | null;
  readonly safety: SafetyView;
  readonly days: DaysView;
  /** What to put ready, then precautions. Null where there is neither. */
  readonly putReady: PutReadyView | null;
  readonly exercises: ExercisesView;
  readonly normal: SentencesView;
  /** Null where nothing changes after the week shown. */
  readonly growth: GrowthView | null;
  readonly tick: TickView;
  /** Two or three sentences: made for one person, no replacement for advice or emergency help. */
  readonly caution: readonly string[];
  /** "Front desk, 555 0142"; the number and the visit's date go beside it: see `visitDate`. */
  readonly footer: FooterView;
}

export interface HeadView {
  /** That nobody has checked the words, in the sheet's language and in English. Null where somebody has. */
  readonly unreviewed: UnreviewedView | null;
  readonly practice: string;
  readonly contact: string;
  /** "Your practitioner: R. Kestrel, physiotherapist". */
  readonly practitioner: string | null;
  /** "For Ada Invented": the person's name; never part of the sheet number. */
  readonly person: string | null;
  readonly title: string;
  /** "For Wednesday 25 November 2026 to Tuesday 5 January 2027." */
  readonly dates: string;
  /** "Next visit: Wednesday 6 January 2027." */
  readonly nextVisit: string | null;
}

export interface UnreviewedView {
  readonly text: string;
  /** Null where `text` is in English. */
  readonly english: string | null;
}

/** A heading and sentences below it. */
export interface SentencesView {
  readonly heading: string;
  readonly sentences: readonly string[];
}

/** "Stop for today if:" and the reasons. */
export interface ReasonsView {
  readonly lead: string;
  readonly reasons: readonly string[];
}

/** The box. */
export interface SafetyView {
  readonly heading: string;
  /** What the numbers of pain are; one line for each range: carry on, ease off, stop; then what effort is. */
  readonly pain: readonly string[];
  readonly stopIf: ReasonsView;
  readonly getInTouchIf: ReasonsView | null;
  /** "Call us the same day or the next: Front desk, 555 0142". */
  readonly contact: string;
  readonly emergencyIf: ReasonsView;
  /** For a telephone that shows the page: "tel:5550142"; null where a number cannot be told for sure. */
  readonly dial: { readonly contact: string | null; readonly emergency: string | null };
}

export interface PutReadyView {
  /** Things, one a line: "A bed or a mat". */
  readonly kit: ThingsView | null;
  readonly precautions: SentencesView | null;
}

export interface ThingsView {
  readonly heading: string;
  readonly things: readonly string[];
  /** "Later on:" and what later weeks need beside. */
  readonly later: ReasonsView | null;
}

export interface DaysView {
  readonly heading: string;
  readonly sessions: readonly SessionView[];
}

export interface SessionView {
  /** "Strong and steady"; a session without a name of its own has one from the pack. */
  readonly name: string;
  /** "exercises 1 to 4, on Monday, Wednesday and Friday. About 15 to 17 minutes." */
  readonly text: string;
  /** "Strong and steady: exercises 1 to 4, on Monday …": both together. */
  readonly sentence: string;
}

export interface ExercisesView {
  readonly heading: string;
  readonly sessions: readonly SessionExercisesView[];
}

/** The exercises that a session adds to the list. */
export interface SessionExercisesView {
  /** "Strong legs: on Monday and Thursday"; null where the plan has one session. */
  readonly heading: string | null;
  readonly groups: readonly ExerciseGroupView[];
}

/** A stretch of the list: what a part of a session adds to it. */
export interface ExerciseGroupView {
  /** The part's own name; null where the file gives it none. */
  readonly heading: string | null;
  /** "Exercises 1 and 2 go together: …"; null where the part is no circuit. */
  readonly together: string | null;
  readonly exercises: readonly ExerciseView[];
}

export interface ExerciseView {
  readonly number: number;
  /** "◆ New": since the sheet before; null where it is as it was. */
  readonly mark: string | null;
  /** "Heel raise: both feet". */
  readonly name: string;
  /** "Standing." Null where the pack has no words for it. */
  readonly position: string | null;
  readonly picture: PictureView | null;
  /** How much, as a plain sentence: first and in bold. */
  readonly dose: string;
  readonly note: string | null;
  /** Setup and steps, in the order done. */
  readonly steps: readonly string[];
  /** "You should feel it: the back of your lower legs". */
  readonly feel: string | null;
  readonly avoid: readonly string[];
  /** "Too hard? Do it sitting." */
  readonly easier: string | null;
  /** "Too easy, and pain stayed at 0 to 3? Hold a bag in one hand." */
  readonly harder: string | null;
  /** More about it at an address. */
  readonly link: LinkView | null;
  /** "Also part of: Wake up." Null where one session has it. */
  readonly alsoIn: string | null;
}

export interface PictureView {
  readonly picture: Picture;
  /** What a person who cannot see it is told. */
  readonly alt: string;
  /** Which side is shown, and whether it is held; null for the practitioner's own picture. */
  readonly caption: string | null;
}

export interface LinkView {
  /** "More about this exercise:" */
  readonly lead: string;
  readonly address: string;
  /** What a person who cannot see the code is told. */
  readonly codeAlt: string;
}

export interface GrowthView {
  readonly heading: string;
  /** "Go no faster than these dates. …" */
  readonly lead: readonly string[];
  /** How the days and rounds change, with dates. */
  readonly days: readonly ChangesView[];
  /** Exercises of the week shown, by number. */
  readonly changes: readonly ChangesView[];
  readonly easyWeeks: readonly EasyWeekView[];
  /** Exercises and levels that come later, numbered on. Null where there are none. */
  readonly later: LaterView | null;
}

export interface LaterView {
  readonly heading: string;
  readonly exercises: readonly LaterExerciseView[];
}

/** "From Wednesday 2 December:", then what to do. */
export interface LineView {
  readonly lead: string;
  readonly text: string;
}

export interface EasyWeekView {
  /** "Easy week: Wednesday 16 December to Tuesday 22 December". */
  readonly heading: string;
  readonly sentences: readonly string[];
  /** "Exercise 2:", then what it is in that week. */
  readonly lines: readonly LineView[];
}

export interface ChangesView {
  /** "Exercise 2: Stand up from a chair" or a session's name. */
  readonly heading: string;
  /** "From Wednesday 2 December: 6 to 9 times." One line a change, dates ascending. */
  readonly lines: readonly LineView[];
}

export interface LaterExerciseView extends ExerciseView {
  /** "From Wednesday 23 December, only if … It takes the place of exercise 2." */
  readonly when: string;
  /** "Exercises 6 and 7 go together: …" where it comes in a circuit. */
  readonly together: string | null;
  /** "Put ready: a step." What it needs that the sheet has not named before. */
  readonly ready: string | null;
  /** How it changes after that. */
  readonly lines: readonly LineView[];
}

export interface TickView {
  readonly heading: string;
  /** What to write, and of which sessions she chooses the days. */
  readonly sentences: readonly string[];
  /** Date, Done, Worst pain 0 to 10, Effort 0 to 10. */
  readonly columns: readonly string[];
  /** One day a row; the other columns are empty. */
  readonly rows: readonly TickRowView[];
  /** That the days go on beyond the rows; null where the rows have them all. */
  readonly goesOn: string | null;
}

export interface TickRowView {
  /** "Wednesday 25 November". */
  readonly date: string;
  /** "Strong legs, Walk": sessions due on that day; null where there is one session only, or none has its day. */
  readonly due: string | null;
}

export interface FooterView {
  readonly contact: string;
  /** "23 November 2026", for the pack's `footer.sheet` ("Sheet {number}, visit of {date}"). */
  readonly visitDate: string;
}
