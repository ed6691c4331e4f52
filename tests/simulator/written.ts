// What a practitioner writes, as plain objects in the YAML's own form ("8-12", "2 s"): only the
// keys that matter for the numbers. yaml.ts adds the prose; resolve.ts gives these their meaning.
// Nothing here, or in any file of this folder, comes from the product's own code: this is a second
// reading of the contract that keeps the first one honest.

export type Count = number | string;

export interface WrittenDose {
  sets?: Count;
  reps?: Count | Count[];
  hold?: string;
  move?: string;
  tempo?: string;
  time?: string;
  pause?: string;
  rest?: string;
  load?: string;
  effort?: Count;
}

export type Sides = 'each' | 'both' | 'middle';
export type Order = 'each-set' | 'each-rep' | 'all-sets';
export type Only = 'left' | 'right' | 'affected' | 'other';

export interface Muscles {
  prime?: string[];
  assist?: string[];
}

export interface WrittenLevel {
  level: string;
  purpose?: string | string[];
  sides?: Sides;
  order?: Order;
  muscles?: Muscles;
  dose?: WrittenDose;
}

export interface WrittenExercise {
  exercise: string;
  purpose: string | string[];
  sides: Sides;
  order?: Order;
  muscles?: Muscles;
  dose?: WrittenDose;
  levels: WrittenLevel[];
}

export interface Dial {
  by?: Count;
  to?: Count;
  round?: string;
  through?: string[];
  restart?: string[];
}

/** One line of a climb: a single key, `{reps: {by: 2, to: 14}}`. */
export type ClimbLine = Record<string, Dial>;

export interface SideOverrides {
  left?: WrittenDose;
  right?: WrittenDose;
  why: string;
}

export interface ItemEntry {
  week: number;
  level?: string;
  dose?: WrittenDose;
  sides?: SideOverrides;
  only?: Only;
  order?: Order;
  climb?: ClimbLine[];
  climb_every?: number;
}

export interface WrittenItem extends Omit<ItemEntry, 'week'> {
  do: string;
  as?: string;
  weeks?: string | string[];
  from_week?: ItemEntry[];
}

export interface PartEntry {
  week: number;
  rounds?: number;
  rest_between_rounds?: string;
  between_items?: string;
}

export interface WrittenPart extends Omit<PartEntry, 'week'> {
  part: string;
  weeks?: string | string[];
  from_week?: PartEntry[];
  items: WrittenItem[];
}

export interface Schedule {
  days?: string[] | 'daily';
  days_a_week?: Count;
  every?: string;
  as_needed?: true;
}

export interface SessionEntry extends Schedule {
  week: number;
  times_a_day?: Count;
  between_items?: string;
}

export interface WrittenSession extends Omit<SessionEntry, 'week'> {
  session: string;
  weeks?: string | string[];
  from_week?: SessionEntry[];
  parts: WrittenPart[];
}

export interface EasyWeeks {
  weeks: Count[];
  sets?: string;
  reps?: string;
  hold?: string;
  time?: string;
}

export interface WrittenPlan {
  plan: string;
  weeks: number;
  affected: 'left' | 'right' | 'both' | 'none';
  between_items?: string;
  one_rep_max?: Record<string, string>;
  easy_weeks?: EasyWeeks;
  sessions: WrittenSession[];
}

export interface WrittenTiming {
  move?: string;
  pause?: string;
  rest?: string;
  change_sides?: string;
  between_items?: string;
  breath?: string;
}

export interface WrittenPractice {
  timing?: WrittenTiming;
  bands: string[];
}

/** All that one run of the numbers needs. */
export interface Case {
  practice: WrittenPractice;
  exercises: WrittenExercise[];
  plan: WrittenPlan;
}
