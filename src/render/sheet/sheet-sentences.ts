// The running text of a sheet, for what judges how it reads. Headings, names, the page to tick, dates
// at the head and ways to reach the practice are no running text. A list's beginning goes with each
// of its entries: "Stop for today if: the knee swells".
import type {
  ExerciseView,
  GrowthView,
  LaterExerciseView,
  LineView,
  ReasonsView,
  SheetView,
} from './sheet-view.ts';

/** Each text is a sentence, or several; those of all languages. What is new since the last sheet is left out. */
export function sheetSentences(sheet: SheetView): readonly string[] {
  const { goals, safety, days, putReady, exercises, normal, growth, tick, caution } = sheet;
  return [
    ...(goals?.sentences ?? []),
    ...safety.pain,
    ...[safety.stopIf, safety.getInTouchIf, safety.emergencyIf].flatMap(reasonsText),
    ...days.sessions.map(({ text }) => text),
    ...(putReady?.precautions?.sentences ?? []),
    ...exercises.sessions.flatMap(({ groups }) =>
      groups.flatMap(({ together, exercises: ones }) => [
        ...present(together),
        ...ones.flatMap(exerciseText),
      ]),
    ),
    ...normal.sentences,
    ...(growth ? growthText(growth) : []),
    ...tick.sentences,
    ...caution,
  ];
}

function reasonsText(reasons: ReasonsView | null): readonly string[] {
  return reasons?.reasons.map((reason) => `${reasons.lead} ${reason}`) ?? [];
}

function exerciseText(one: ExerciseView): readonly string[] {
  const { position, dose, note, steps, feel, avoid, easier, harder } = one;
  const rest = [feel, ...avoid, easier, harder];
  return [...present(position), dose, ...present(note), ...steps, ...rest.flatMap(present)];
}

function growthText({ lead, days, changes, easyWeeks, later }: GrowthView): readonly string[] {
  return [
    ...lead,
    ...[...days, ...changes].flatMap(({ lines }) => lines.map(lineText)),
    ...easyWeeks.flatMap(({ sentences, lines }) => [...sentences, ...lines.map(lineText)]),
    ...(later?.exercises.flatMap(laterText) ?? []),
  ];
}

function laterText(one: LaterExerciseView): readonly string[] {
  const { when, together, ready, lines } = one;
  return [
    when,
    ...[together, ready].flatMap(present),
    ...exerciseText(one),
    ...lines.map(lineText),
  ];
}

function lineText({ lead, text }: LineView): string {
  return `${lead} ${text}`;
}

function present(text: string | null): readonly string[] {
  return text === null ? [] : [text];
}
