// What a sheet says, for the clinic copy: its own sentences without the steps and the page to tick.
import type { ChangesView, ExerciseView, SentencesView, SheetView } from '../sheet/sheet-view.ts';

/** The sheet's headings with their sentences, in the sheet's order. */
export function sheetInShort(sheet: SheetView, shortDay: SentencesView | null): SentencesView[] {
  const { goals, safety, days, putReady, exercises, normal, growth } = sheet;
  return [
    ...(goals ? [goals] : []),
    { heading: safety.heading, sentences: safetySentences(sheet) },
    { heading: days.heading, sentences: days.sessions.map(({ sentence }) => sentence) },
    ...(putReady ? [putReady] : []),
    {
      heading: exercises.heading,
      sentences: exercises.groups.flatMap(({ together, exercises: ones }) => [
        ...(together ? [together] : []),
        ...ones.map((one) => exerciseInShort(one)),
      ]),
    },
    normal,
    ...(growth
      ? [
          {
            heading: growth.heading,
            sentences: [
              growth.lead,
              ...growth.changes.flatMap(changesInShort),
              ...growth.later.flatMap(({ when, together, ready, lines, ...one }) => [
                exerciseInShort({ ...one, when }),
                ...(together ? [together] : []),
                ...(ready ? [ready] : []),
                ...lines,
              ]),
              ...growth.days.flatMap(changesInShort),
            ],
          },
        ]
      : []),
    ...(shortDay ? [shortDay] : []),
  ];
}

function safetySentences({ safety }: SheetView): string[] {
  const { pain, stopIf, getInTouchIf, emergencyIf } = safety;
  const reasons = [stopIf, ...(getInTouchIf ? [getInTouchIf] : []), emergencyIf];
  return [...pain, ...reasons.map((one) => `${one.lead} ${one.reasons.join('; ')}`)];
}

function exerciseInShort(one: ExerciseView & { readonly when?: string }): string {
  return [`${one.number}. ${one.name}`, one.when, one.dose, one.note].filter(Boolean).join(' · ');
}

function changesInShort({ heading, lines }: ChangesView): string[] {
  return lines.map((line) => `${heading} · ${line}`);
}
