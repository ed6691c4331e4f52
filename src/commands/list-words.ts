// `carryover list words`: the ids that the files may use, with what a sheet calls them.
import type { Practice, VocabularyKind } from '../model/practice.ts';
import { CONCERNS, DEMANDS, KIT, MUSCLES, muscleGroup, POSITIONS } from '../model/vocabulary.ts';
import { type ListedWord, listWordsText } from '../render/terminal/list-text.ts';
import { compileWork } from './compiled.ts';
import { type CommandResult, openFolder, type Session } from './session.ts';

const SHIPPED: Readonly<Record<VocabularyKind, readonly string[]>> = {
  positions: POSITIONS,
  kit: KIT,
  muscles: Object.keys(MUSCLES),
  demands: DEMANDS,
  concerns: Object.keys(CONCERNS),
};

export const WORD_KINDS: readonly string[] = [...Object.keys(SHIPPED), 'bands'];

/** All kinds, or one. */
export function listWords(session: Session, kind: string | undefined): CommandResult {
  const { compiled, wording } = compileWork(
    openFolder(session),
    { plans: [], exercises: [] },
    session,
  );
  const { practice } = compiled;
  const words = wording.get(practice.language);
  const called = (of: VocabularyKind, id: string) => words?.look(of, id) ?? null;
  const all = wordsOf(practice, called).filter((one) => kind === undefined || one.kind === kind);
  return {
    status: 0,
    findings: [],
    log: all.length === 0 ? 'There are none.\n' : '',
    data: {
      words: all.map(({ isOwn, ...one }) => ({ ...one, own: isOwn })),
    },
    out: all.length === 0 ? '' : `${listWordsText(all, session)}\n`,
  };
}

function wordsOf(
  { vocabulary, bands }: Practice,
  called: (kind: VocabularyKind, id: string) => string | null,
): readonly ListedWord[] {
  const words = (Object.keys(SHIPPED) as VocabularyKind[]).flatMap((kind) => {
    const ids = kind === 'concerns' ? vocabulary.concerns.keys() : vocabulary[kind];
    return [...ids].map((id) => ({
      kind,
      id,
      words: called(kind, id),
      region: kind === 'muscles' ? muscleGroup(id) : null,
      isOwn: !SHIPPED[kind].includes(id) || vocabulary.words[kind].has(id),
    }));
  });
  const ofBands = bands.map((id) => ({ kind: 'bands', id, words: id, region: null, isOwn: true }));
  return [...words, ...ofBands];
}
