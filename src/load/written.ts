// Made from schemas/ by `npm run types`: what the files look like as written. Do not edit.

export type CheckSettingFile =
  | string
  | {
      [k: string]: string | number;
    };
export type PropFile =
  | string
  | {
      chair?: string | string[];
      worktop?: string | string[];
      table?: string | string[];
      wall?: string | string[];
      step?: string | string[];
      stairs?: string | string[];
      rail?: string | string[];
      'door-frame'?: string | string[];
      bed?: string | string[];
      mat?: string | string[];
      pillow?: string | string[];
      towel?: string | string[];
      roll?: string | string[];
      band?: string | string[];
      weight?: string | string[];
      stick?: string | string[];
      ball?: string | string[];
      bag?: string | string[];
    };

export interface Files {
  practice: PracticeFile;
  exercise: ExerciseFile;
  translation: TranslationFile;
  plan: PlanFile;
  people: PeopleFile;
}
export interface PracticeFile {
  schema: 1;
  practice: string | number | boolean;
  contact: string | number | boolean;
  emergency: string | number | boolean;
  emergency_if: (string | number | boolean)[];
  get_in_touch?: (string | number | boolean)[];
  language?: string;
  in_language?: {
    [k: string]: PracticeTextsFile;
  };
  paper?: 'a4' | 'letter';
  timing?: TimingFile;
  pain?: PracticePainFile;
  stop_if: (string | number | boolean)[];
  bands?: (string | number | boolean)[];
  practitioners?: {
    [k: string]: string | number | boolean;
  };
  words?: WordsFile;
  checks?: {
    [k: string]: CheckSettingFile;
  };
}
export interface PracticeTextsFile {
  contact?: string | number | boolean;
  emergency_if?: (string | number | boolean)[];
  get_in_touch?: (string | number | boolean)[];
  stop_if?: (string | number | boolean)[];
  bands?: {
    [k: string]: string | number | boolean;
  };
  practitioners?: {
    [k: string]: string | number | boolean;
  };
  positions?: {
    [k: string]: string | number | boolean;
  };
  kit?: {
    [k: string]: string | number | boolean;
  };
}
export interface TimingFile {
  move?: string;
  pause?: string;
  rest?: string;
  change_sides?: string;
  between_items?: string;
  breath?: string;
}
export interface PracticePainFile {
  carry_on?: number | string;
  ease_off?: number | string;
  stop?: number | string;
  settles_by?: 'same-evening' | 'next-morning' | 'within-24-hours';
}
export interface WordsFile {
  positions?: {
    [k: string]: string | number | boolean;
  };
  muscles?: {
    [k: string]: string | number | boolean;
  };
  demands?: {
    [k: string]: string | number | boolean;
  };
  kit?: {
    [k: string]: string | number | boolean;
  };
  concerns?: {
    [k: string]: ConcernFile;
  };
  plain?: (string | number | boolean)[];
}
export interface ConcernFile {
  name: string | number | boolean;
  limits?: (string | number | boolean)[];
  positions?: (string | number | boolean)[];
}
export interface ExerciseFile {
  exercise: string | number | boolean;
  name: string | number | boolean;
  purpose:
    | string
    | (
        | 'warm-up'
        | 'mobility'
        | 'strength'
        | 'isometric'
        | 'stretch'
        | 'balance'
        | 'cardio'
        | 'breathing'
        | 'relaxation'
      )[];
  position: string | number | boolean;
  sides: 'each' | 'both' | 'middle';
  limb?:
    'leg' | 'arm' | 'foot' | 'hand' | 'knee' | 'shoulder' | 'foot-in-front' | 'side' | 'direction';
  order?: 'each-set' | 'each-rep' | 'all-sets';
  tempo_words?: ('down' | 'up')[];
  muscles?: MusclesFile;
  kit?: (string | (string | number | boolean)[])[];
  demands?: (string | number | boolean)[];
  tags?: (string | number | boolean)[];
  setup?: (string | number | boolean)[];
  steps: (string | number | boolean)[];
  feel?: string | number | boolean;
  avoid?: (string | number | boolean)[];
  easier?: string | number | boolean;
  harder?: string | number | boolean;
  picture?: string;
  figure?: FigureFile;
  link?: string;
  dose?: DoseFile;
  levels: LevelFile[];
}
export interface MusclesFile {
  prime?: (string | number | boolean)[];
  assist?: (string | number | boolean)[];
}
export interface FigureFile {
  view?: 'side' | 'front' | 'back' | 'above';
  show?: 'whole' | 'upper-body' | 'head' | 'arm' | 'legs' | 'lower-leg';
  tilt?: number | string;
  position?:
    | 'supine'
    | 'crook-lying'
    | 'prone'
    | 'side-lying'
    | 'hands-and-knees'
    | 'sitting'
    | 'long-sitting'
    | 'half-kneeling'
    | 'kneeling'
    | 'standing'
    | 'walking';
  props?: PropFile[];
  arrow?:
    | 'hand'
    | 'other-hand'
    | 'elbow'
    | 'other-elbow'
    | 'shoulder'
    | 'other-shoulder'
    | 'knee'
    | 'other-knee'
    | 'foot'
    | 'other-foot'
    | 'heel'
    | 'other-heel'
    | 'head'
    | 'back'
    | 'seat';
  start?: PoseFile;
  end?: PoseFile;
}
export interface PoseFile {
  hand?:
    | 'floor'
    | 'wall'
    | 'worktop'
    | 'chair'
    | 'rail'
    | 'door-frame'
    | 'hip'
    | 'thigh'
    | 'knee'
    | 'foot'
    | 'belly'
    | 'chest'
    | 'other-shoulder'
    | 'other-elbow'
    | 'head'
    | 'other-ear'
    | 'neck'
    | 'back'
    | 'free';
  foot?: 'floor' | 'toes' | 'heel' | 'step' | 'wall' | 'other-foot' | 'other-knee' | 'free';
  rests_on?: (
    | 'feet'
    | 'foot'
    | 'other-foot'
    | 'toes'
    | 'knees'
    | 'knee'
    | 'other-knee'
    | 'seat'
    | 'heels'
    | 'back'
    | 'upper-back'
    | 'front'
    | 'side'
    | 'other-side'
    | 'hands'
    | 'hand'
    | 'other-hand'
    | 'forearms'
    | 'forearm'
    | 'other-forearm'
    | 'wall'
  )[];
  other?: OtherLimbFile;
  trunk_flexion?: number | string;
  trunk_side_bend?: number | string;
  trunk_rotation?: number | string;
  neck_flexion?: number | string;
  neck_side_bend?: number | string;
  neck_rotation?: number | string;
  chin_back?: number | string;
  lean?: number | string;
  hip_flexion?: number | string;
  hip_abduction?: number | string;
  hip_rotation?: number | string;
  knee_flexion?: number | string;
  ankle_dorsiflexion?: number | string;
  foot_eversion?: number | string;
  shoulder_flexion?: number | string;
  shoulder_abduction?: number | string;
  shoulder_rotation?: number | string;
  elbow_flexion?: number | string;
  wrist_flexion?: number | string;
  shrug?: number | string;
  shoulder_forward?: number | string;
}
export interface OtherLimbFile {
  hand?:
    | 'floor'
    | 'wall'
    | 'worktop'
    | 'chair'
    | 'rail'
    | 'door-frame'
    | 'hip'
    | 'thigh'
    | 'knee'
    | 'foot'
    | 'belly'
    | 'chest'
    | 'other-shoulder'
    | 'other-elbow'
    | 'head'
    | 'other-ear'
    | 'neck'
    | 'back'
    | 'free';
  foot?: 'floor' | 'toes' | 'heel' | 'step' | 'wall' | 'other-foot' | 'other-knee' | 'free';
  hip_flexion?: number | string;
  hip_abduction?: number | string;
  hip_rotation?: number | string;
  knee_flexion?: number | string;
  ankle_dorsiflexion?: number | string;
  foot_eversion?: number | string;
  shoulder_flexion?: number | string;
  shoulder_abduction?: number | string;
  shoulder_rotation?: number | string;
  elbow_flexion?: number | string;
  wrist_flexion?: number | string;
  shrug?: number | string;
  shoulder_forward?: number | string;
}
export interface DoseFile {
  sets?: number | string;
  reps?: number | string | (number | string)[];
  hold?: string;
  move?: string;
  tempo?: string;
  time?: string;
  pause?: string;
  rest?: string;
  load?: string;
  effort?: number | string;
  until?: 'tired' | 'none';
  range?: string;
}
export interface LevelFile {
  level: string | number | boolean;
  name?: string | number | boolean;
  purpose?:
    | string
    | (
        | 'warm-up'
        | 'mobility'
        | 'strength'
        | 'isometric'
        | 'stretch'
        | 'balance'
        | 'cardio'
        | 'breathing'
        | 'relaxation'
      )[];
  position?: string | number | boolean;
  sides?: 'each' | 'both' | 'middle';
  limb?:
    'leg' | 'arm' | 'foot' | 'hand' | 'knee' | 'shoulder' | 'foot-in-front' | 'side' | 'direction';
  order?: 'each-set' | 'each-rep' | 'all-sets';
  tempo_words?: ('down' | 'up')[];
  muscles?: MusclesFile;
  kit?: (string | (string | number | boolean)[])[];
  demands?: (string | number | boolean)[];
  tags?: (string | number | boolean)[];
  setup?: (string | number | boolean)[];
  steps?: (string | number | boolean)[];
  feel?: string | number | boolean;
  avoid?: (string | number | boolean)[];
  easier?: string | number | boolean;
  harder?: string | number | boolean;
  picture?: string;
  figure?: FigureFile;
  link?: string;
  dose?: DoseFile;
  bounds?: BoundsFile;
  move_on_when?: MoveOnWhenFile;
}
export interface BoundsFile {
  sets?: number | string;
  reps?: number | string;
  hold?: string;
  time?: string;
  load?: string;
}
export interface MoveOnWhenFile {
  reps?: number | string;
  sets?: number | string;
  hold?: string;
  time?: string;
  load?: string;
  pain_at_most?: number;
  effort_at_most?: number;
  sessions_in_a_row?: number | string;
}
export interface TranslationFile {
  exercise: string | number | boolean;
  language: string;
  name?: string | number | boolean;
  setup?: (string | number | boolean)[];
  steps?: (string | number | boolean)[];
  feel?: string | number | boolean;
  avoid?: (string | number | boolean)[];
  easier?: string | number | boolean;
  harder?: string | number | boolean;
  levels?: TranslatedLevelFile[];
}
export interface TranslatedLevelFile {
  level: string | number | boolean;
  name?: string | number | boolean;
  setup?: (string | number | boolean)[];
  steps?: (string | number | boolean)[];
  feel?: string | number | boolean;
  avoid?: (string | number | boolean)[];
  easier?: string | number | boolean;
  harder?: string | number | boolean;
}
export interface PlanFile {
  plan: string | number | boolean;
  person?: string | number | boolean;
  handout_language?: string;
  title: string | number | boolean;
  by?: string | number | boolean;
  visits: VisitFile[];
  starts?: string;
  next_visit?: string;
  weeks: number;
  affected: 'left' | 'right' | 'both' | 'none';
  print?: 'normal' | 'large';
  goals?: (string | number | boolean)[];
  profile?: ProfileFile;
  limits?: LimitsFile;
  one_rep_max?: {
    [k: string]: string;
  };
  precautions?: (string | number | boolean)[];
  pain?: PlanPainFile;
  stop_if_also?: (string | number | boolean)[];
  easy_weeks?: EasyWeeksFile;
  short_day?: ShortDayFile;
  between_items?: string;
  sessions: SessionFile[];
  accept?: AcceptFile[];
  report?: ReportFile;
  closed?: ClosedFile;
}
export interface VisitFile {
  date: string;
  found?: string | number | boolean;
  why?: string | number | boolean;
}
export interface ProfileFile {
  age_band?: 'under-18' | '18-64' | '65-plus';
  training?: 'new' | 'some' | 'trained';
}
export interface LimitsFile {
  time?: string;
  kit?: (string | number | boolean)[];
  positions_to_avoid?: (string | number | boolean)[];
  concerns?: (string | number | boolean)[];
}
export interface PlanPainFile {
  carry_on: number | string;
  ease_off: number | string;
  stop: number | string;
}
export interface EasyWeeksFile {
  weeks: (number | string)[];
  sets?: string;
  reps?: string;
  hold?: string;
  time?: string;
}
export interface ShortDayFile {
  time: string;
}
export interface SessionFile {
  session: string | number | boolean;
  name?: string | number | boolean;
  days?: string | ('mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun')[];
  days_a_week?: number | string;
  every?: string;
  as_needed?: true;
  times_a_day?: number | string;
  weeks?: string | string[];
  between_items?: string;
  from_week?: SessionEntryFile[];
  parts: PartFile[];
  accept?: AcceptFile[];
}
export interface SessionEntryFile {
  week: number;
  name?: string | number | boolean;
  days?: string | ('mon' | 'tue' | 'wed' | 'thu' | 'fri' | 'sat' | 'sun')[];
  days_a_week?: number | string;
  every?: string;
  as_needed?: true;
  times_a_day?: number | string;
  between_items?: string;
}
export interface PartFile {
  part:
    | 'warm-up'
    | 'mobility'
    | 'strength'
    | 'balance'
    | 'cardio'
    | 'practice'
    | 'stretch'
    | 'relaxation';
  name?: string | number | boolean;
  weeks?: string | string[];
  rounds?: number | string;
  rest_between_rounds?: string;
  between_items?: string;
  from_week?: PartEntryFile[];
  items: ItemFile[];
  accept?: AcceptFile[];
}
export interface PartEntryFile {
  week: number;
  name?: string | number | boolean;
  rounds?: number | string;
  rest_between_rounds?: string;
  between_items?: string;
}
export interface ItemFile {
  do: string | number | boolean;
  as?: string | number | boolean;
  level?: string | number | boolean;
  dose?: DoseFile;
  sides?: SideOverridesFile;
  only?: 'left' | 'right' | 'affected' | 'other';
  order?: 'each-set' | 'each-rep' | 'all-sets';
  priority?: 'must' | 'should' | 'could';
  note?: string | number | boolean;
  weeks?: string | string[];
  start_when?: string | number | boolean;
  climb?: ClimbStepFile[];
  climb_every?: number | string;
  move_on_when?: MoveOnWhenFile;
  advance?: 'when-ready' | 'by-week';
  from_week?: ItemEntryFile[];
  accept?: AcceptFile[];
}
export interface SideOverridesFile {
  left?: LeftDoseFile;
  right?: RightDoseFile;
  why: string | number | boolean;
}
export interface LeftDoseFile {
  sets?: number | string;
  reps?: number | string | (number | string)[];
  hold?: string;
  time?: string;
  tempo?: string;
  load?: string;
  effort?: number | string;
}
export interface RightDoseFile {
  sets?: number | string;
  reps?: number | string | (number | string)[];
  hold?: string;
  time?: string;
  tempo?: string;
  load?: string;
  effort?: number | string;
}
export interface ClimbStepFile {
  reps?: RepsDialFile;
  hold?: HoldDialFile;
  time?: TimeDialFile;
  sets?: SetsDialFile;
  load?: LoadDialFile;
  rest?: RestDialFile;
  pause?: PauseDialFile;
  effort?: EffortDialFile;
  level?: LevelDialFile;
}
export interface RepsDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface HoldDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface TimeDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface SetsDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface LoadDialFile {
  by?: number | string;
  to?: number | string;
  round?: number | string;
  through?: (string | number | boolean)[];
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface RestDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface PauseDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface EffortDialFile {
  by: number | string;
  to: number | string;
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface LevelDialFile {
  through: (string | number | boolean)[];
  restart?: ('reps' | 'hold' | 'time' | 'sets' | 'load' | 'rest' | 'pause' | 'effort')[];
}
export interface ItemEntryFile {
  week: number;
  level?: string | number | boolean;
  dose?: DoseFile;
  sides?: SideOverridesFile;
  only?: 'left' | 'right' | 'affected' | 'other';
  order?: 'each-set' | 'each-rep' | 'all-sets';
  climb?: ClimbStepFile[];
  climb_every?: number | string;
  note?: string | number | boolean;
  priority?: 'must' | 'should' | 'could';
  move_on_when?: MoveOnWhenFile;
  advance?: 'when-ready' | 'by-week';
}
export interface AcceptFile {
  check: string | number | boolean;
  why: string | number | boolean;
  until?: string;
}
export interface ReportFile {
  [k: string]: string | number | boolean;
}
export interface ClosedFile {
  date: string;
  why: string | number | boolean;
}
export interface PeopleFile {
  [k: string]: PersonFile;
}
export interface PersonFile {
  name?: string | number | boolean;
  language?: string;
}
