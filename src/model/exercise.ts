// An exercise of the library and its levels, each level with all that it says after overriding
// what its exercise says.
import type { Place, SourceText } from '../finding/place.ts';
import type { Order, Sides } from '../units/side.ts';
import type { Bounds, DoseLayer, MoveOnWhen } from './dose.ts';
import type { Figure } from './figure.ts';
import type { PrintedText } from './printed-text.ts';
import type { LevelTexts } from './translation.ts';

export const PURPOSES = [
  'warm-up',
  'mobility',
  'strength',
  'isometric',
  'stretch',
  'balance',
  'cardio',
  'breathing',
  'relaxation',
] as const;
export type Purpose = (typeof PURPOSES)[number];

export const LIMBS = [
  'leg',
  'arm',
  'foot',
  'hand',
  'knee',
  'shoulder',
  'foot-in-front',
  'side',
  'direction',
] as const;
export type Limb = (typeof LIMBS)[number];

/** The practitioner's own drawing or photo, as bytes that were checked; or a figure, drawn. */
export interface Picture {
  /** Null for one that was drawn from joint angles. */
  readonly file: string | null;
  readonly mediaType: string;
  readonly bytes: Uint8Array;
}

export interface Muscles {
  readonly prime: readonly string[];
  readonly assist: readonly string[];
}

export interface Level {
  readonly id: string;
  /** The level's own name, added to the exercise's; null where the file gives none. */
  readonly name: string | null;
  readonly place: Place;
  /** The exercise's name, or the level's override of it. */
  readonly exerciseName: string;
  /** The main one first; never empty. */
  readonly purposes: readonly Purpose[];
  readonly position: string;
  readonly sides: Sides;
  readonly limb: Limb | null;
  /** Where `limb` stands. */
  readonly limbPlace: Place | null;
  readonly order: Order | null;
  readonly tempoWords: 'down-up' | 'up-down';
  readonly muscles: Muscles;
  /** All are needed; of an inner list, any one. */
  readonly kit: readonly (readonly string[])[];
  readonly demands: readonly string[];
  readonly tags: readonly string[];
  readonly setup: readonly string[];
  readonly steps: readonly string[];
  readonly feel: string | null;
  readonly avoid: readonly string[];
  readonly easier: string | null;
  readonly harder: string | null;
  readonly picture: Picture | null;
  /** Drawn where there is no picture. */
  readonly figure: Figure | null;
  /** An https address with more about it. */
  readonly link: string | null;
  /** The exercise's dose and the level's, in order; a later one wins. */
  readonly exerciseDose: DoseLayer | null;
  readonly levelDose: DoseLayer | null;
  readonly bounds: Bounds | null;
  readonly moveOnWhen: MoveOnWhen | null;
  /** Its texts in further languages, by BCP 47 tag. */
  readonly translations: ReadonlyMap<string, LevelTexts>;
}

/** The level as it reads in a language; as its file has it where that is the language of the file. */
export function levelIn(level: Level, language: string): Level {
  const texts = level.translations.get(language);
  return texts ? { ...level, ...texts } : level;
}

export interface Exercise {
  readonly id: string;
  readonly name: string;
  readonly source: SourceText;
  readonly place: Place;
  /** Easiest first; never empty. */
  readonly levels: readonly Level[];
  readonly printed: readonly PrintedText[];
}
