// What a sheet says, for the clinic copy: its own sentences without the steps and the page to tick.
import type {
  ExerciseView,
  GrowthView,
  LineView,
  PutReadyView,
  SentencesView,
  SheetView,
} from '../sheet/sheet-view.ts';

/** The sheet's headings with their sentences, in the sheet's order. */
export function sheetInShort(sheet: SheetView, shortDay: SentencesView | null): SentencesView[] {
  const { goals, news, safety, days, putReady, exercises, normal, growth } = sheet;
  return [
    ...(goals ? [goals] : []),
    ...(news ? [news] : []),
    { heading: safety.heading, sentences: safetySentences(sheet) },
    { heading: days.heading, sentences: days.sessions.map(({ sentence }) => sentence) },
    ...(putReady ? putReadyInShort(putReady) : []),
    {
      heading: exercises.heading,
      sentences: exercises.sessions.flatMap(({ groups }) =>
        groups.flatMap(({ together, exercises: ones }) => [
          ...(together ? [together] : []),
          ...ones.map((one) => exerciseInShort(one)),
        ]),
      ),
    },
    normal,
    ...(growth ? growthInShort(growth) : []),
    ...(shortDay ? [shortDay] : []),
  ];
}

function safetySentences({ safety }: SheetView): string[] {
  const { pain, stopIf, getInTouchIf, emergencyIf } = safety;
  const reasons = [stopIf, ...(getInTouchIf ? [getInTouchIf] : []), emergencyIf];
  return [...pain, ...reasons.map((one) => `${one.lead} ${one.reasons.join('; ')}`)];
}

function putReadyInShort({ kit, precautions }: PutReadyView): SentencesView[] {
  const things = kit && [
    kit.things.join('; '),
    ...(kit.later ? [`${kit.later.lead} ${kit.later.reasons.join('; ')}`] : []),
  ];
  return [
    ...(kit && things
      ? [{ heading: kit.heading, sentences: things.filter((text) => text !== '') }]
      : []),
    ...(precautions ? [precautions] : []),
  ];
}

function growthInShort({ heading, lead, days, changes, easyWeeks, later }: GrowthView) {
  const sections: SentencesView[] = [
    {
      heading,
      sentences: [
        ...lead,
        ...[...days, ...changes].flatMap((block) => linesInShort(block.heading, block.lines)),
        ...easyWeeks.flatMap((easy) => [
          ...easy.sentences.map((sentence) => `${easy.heading} · ${sentence}`),
          ...linesInShort(easy.heading, easy.lines),
        ]),
      ],
    },
  ];
  if (!later) return sections;
  const sentences = later.exercises.flatMap(({ when, together, ready, lines, ...one }) => [
    exerciseInShort({ ...one, when }),
    ...(together ? [together] : []),
    ...(ready ? [ready] : []),
    ...lines.map((line) => `${line.lead} ${line.text}`),
  ]);
  return [...sections, { heading: later.heading, sentences }];
}

function exerciseInShort(one: ExerciseView & { readonly when?: string }): string {
  return [`${one.number}. ${one.name}`, one.when, one.dose, one.note].filter(Boolean).join(' · ');
}

function linesInShort(heading: string, lines: readonly LineView[]): string[] {
  return lines.map(({ lead, text }) => `${heading} · ${lead} ${text}`);
}
