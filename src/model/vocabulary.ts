// The closed vocabulary that ships: positions, kit, muscles, demands, concerns. Ids and what they mean
// to the checks only; the words that a person reads stand in the words packs, and a practice adds
// ids of its own, or rewords these, under `words` in practice.yaml.
import type { Concern } from './practice.ts';

/** Starting positions by their trade terms. */
export const POSITIONS = [
  'supine',
  'crook-lying',
  'prone',
  'side-lying',
  'hands-and-knees',
  'sitting',
  'long-sitting',
  'half-kneeling',
  'kneeling',
  'standing',
  'walking',
] as const;

/** Things found in a home. Bands are not here: a practice names its own, and a load asks for them. */
export const KIT = [
  'chair',
  'sofa',
  'footstool',
  'table',
  'worktop',
  'bed',
  'wall',
  'door-frame',
  'rail',
  'step',
  'stairs',
  'mat',
  'towel',
  'rolled-towel',
  'pillow',
  'cushion',
  'belt',
  'book',
  'bag',
  'bottle',
  'weight',
  'stick',
  'ball',
  'shoes',
] as const;

export type MuscleGroup =
  | 'neck'
  | 'upper-back'
  | 'shoulder'
  | 'rotator-cuff'
  | 'chest'
  | 'elbow-flexors'
  | 'elbow-extensors'
  | 'forearm'
  | 'abdominals'
  | 'lower-back'
  | 'hip-flexors'
  | 'glutes'
  | 'hip-adductors'
  | 'quadriceps'
  | 'hamstrings'
  | 'calf'
  | 'shin'
  | 'breathing-pelvic';

/** A muscle by its group and its numbers in two open anatomies; none where there is none to give. */
export interface Muscle {
  readonly group: MuscleGroup;
  readonly uberon: readonly string[];
  readonly fma: readonly string[];
}

function muscle(group: MuscleGroup, uberon: readonly string[], fma: readonly string[]): Muscle {
  return { group, uberon, fma };
}

// Uberon (CC BY) as of its release of 2015-07-24; FMA numbers as cross-referenced there. Uberon retires
// terms: compare with a current release before printing one as an identifier. A muscle that stands
// for several (wrist-flexors) has the numbers of them all.
export const MUSCLES = {
  sternocleidomastoid: muscle('neck', ['0001128'], ['13407']),
  scalenes: muscle('neck', ['0008611'], ['64829']),
  'longus-colli': muscle('neck', ['0001121'], ['13370']),
  'longus-capitis': muscle('neck', ['0001563'], ['46308']),
  'splenius-capitis': muscle('neck', ['0000711'], ['22653']),
  'levator-scapulae': muscle('upper-back', ['0005461'], ['32519']),
  trapezius: muscle('upper-back', ['0002380'], ['9626']),
  rhomboids: muscle('upper-back', ['0005621'], []),
  'latissimus-dorsi': muscle('upper-back', ['0001112'], ['13357']),
  'teres-major': muscle('upper-back', ['0001478'], ['32549']),
  'serratus-anterior': muscle('shoulder', ['0001125'], ['13397']),
  deltoid: muscle('shoulder', ['0001476'], ['32521']),
  supraspinatus: muscle('rotator-cuff', ['0002383'], ['9629']),
  infraspinatus: muscle('rotator-cuff', ['0001477'], ['32546']),
  'teres-minor': muscle('rotator-cuff', ['0010496'], ['32550']),
  subscapularis: muscle('rotator-cuff', ['0001129'], ['13413']),
  'pectoralis-major': muscle('chest', ['0002381'], ['9627']),
  'pectoralis-minor': muscle('chest', ['0001100'], ['13109']),
  'biceps-brachii': muscle('elbow-flexors', ['0001507'], ['37670']),
  brachialis: muscle('elbow-flexors', ['0001506'], ['37667']),
  brachioradialis: muscle('elbow-flexors', ['0011011'], ['38485']),
  'triceps-brachii': muscle('elbow-extensors', ['0001509'], ['37688']),
  anconeus: muscle('elbow-extensors', ['0002989'], ['37704']),
  'wrist-flexors': muscle('forearm', ['0001521', '0001522'], ['38459', '38465']),
  'wrist-extensors': muscle(
    'forearm',
    ['0001524', '0001525', '0001526'],
    ['38494', '38497', '38506'],
  ),
  'pronator-teres': muscle('forearm', ['0001520'], ['38450']),
  supinator: muscle('forearm', ['0003228'], ['38512']),
  'rectus-abdominis': muscle('abdominals', ['0002382'], ['9628']),
  'external-oblique': muscle('abdominals', ['0005442'], ['13335']),
  'internal-oblique': muscle('abdominals', ['0005454'], ['13891']),
  'transversus-abdominis': muscle('abdominals', ['0001221'], ['15570']),
  'erector-spinae': muscle('lower-back', ['0002462'], ['71302']),
  multifidus: muscle('lower-back', [], []),
  'quadratus-lumborum': muscle('lower-back', ['0001220'], ['15569']),
  iliopsoas: muscle('hip-flexors', ['0001999'], ['64918']),
  sartorius: muscle('hip-flexors', ['0001373'], ['22353']),
  'tensor-fasciae-latae': muscle('hip-flexors', ['0001376'], ['22423']),
  'gluteus-maximus': muscle('glutes', ['0001370'], ['22314']),
  'gluteus-medius': muscle('glutes', ['0001371'], ['22315']),
  'gluteus-minimus': muscle('glutes', ['0008521'], ['22317']),
  piriformis: muscle('glutes', ['0008529'], ['19082']),
  'adductor-longus': muscle('hip-adductors', ['0000303'], ['22441']),
  'adductor-brevis': muscle('hip-adductors', ['0000368'], ['22442']),
  'adductor-magnus': muscle('hip-adductors', ['0000370'], ['22443']),
  gracilis: muscle('hip-adductors', ['0000950'], ['43882']),
  pectineus: muscle('hip-adductors', ['0001382'], ['22440']),
  'rectus-femoris': muscle('quadriceps', ['0001378'], ['22430']),
  'vastus-lateralis': muscle('quadriceps', ['0001379'], ['22431']),
  'vastus-medialis': muscle('quadriceps', ['0001380'], ['22432']),
  'vastus-intermedius': muscle('quadriceps', ['0014847'], ['22433']),
  'quadriceps-femoris': muscle('quadriceps', ['0001377'], ['22428']),
  'biceps-femoris': muscle('hamstrings', ['0001374'], ['22356']),
  semitendinosus: muscle('hamstrings', ['0001375'], ['22357']),
  semimembranosus: muscle('hamstrings', ['0001381'], ['22438']),
  hamstrings: muscle('hamstrings', ['0002463'], ['81022']),
  gastrocnemius: muscle('calf', ['0001388'], ['22541']),
  soleus: muscle('calf', ['0001389'], ['22542']),
  'tibialis-posterior': muscle('calf', ['0001667'], ['51099']),
  'flexor-hallucis-longus': muscle('calf', ['0001392'], ['22593']),
  popliteus: muscle('calf', ['0001391'], ['22590']),
  'tibialis-anterior': muscle('shin', ['0001385'], ['22532']),
  'extensor-digitorum-longus': muscle('shin', ['0001386'], ['22534']),
  'fibularis-longus': muscle('shin', ['0001387'], ['22539']),
  'fibularis-brevis': muscle('shin', ['0010526'], ['22540']),
  diaphragm: muscle('breathing-pelvic', ['0001103'], ['13295']),
  'levator-ani': muscle('breathing-pelvic', ['0001326'], ['19087']),
} as const satisfies Readonly<Record<string, Muscle>>;

/** The group of a shipped muscle; one of the practice's own has none. */
export function muscleGroup(id: string): MuscleGroup | null {
  return Object.hasOwn(MUSCLES, id) ? MUSCLES[id as keyof typeof MUSCLES].group : null;
}

/** What an exercise can ask of the body; a concern says which of these it limits. */
export const DEMANDS = [
  'breath-hold-strain',
  'heavy-lifting',
  'abdominal-wall-strain',
  'head-down',
  'quick-head-turns',
  'quick-change-of-position',
  'floor-transfer',
  'lying-flat-on-back',
  'prone-lying',
  'long-standing-still',
  'unsupported-standing',
  'single-leg-stance',
  'eyes-closed-balance',
  'jumping',
  'loaded-spine-flexion',
  'end-range-spine-flexion',
  'end-range-spine-extension',
  'end-range-spine-rotation',
  'neck-end-range',
  'neck-load',
  'overhead-reach',
  'hand-behind-back',
  'shoulder-end-range-rotation',
  'arm-weight-bearing',
  'wrist-load',
  'hip-flexion-past-90',
  'hip-past-midline',
  'hip-end-range-rotation',
  'deep-knee-bend',
  'kneeling-load',
  'knee-twist',
  'calf-tendon-load',
  'ankle-end-range',
] as const;

type DemandId = (typeof DEMANDS)[number];
type PositionId = (typeof POSITIONS)[number];

interface ShippedConcern extends Concern {
  readonly limits: readonly DemandId[];
  readonly positions: readonly PositionId[];
}

// Limited is not forbidden: a conflict is a warning that the practitioner settles or accepts with a
// reason, so a list is rather a little long than short. Sources are quoted from memory.
export const CONCERNS = {
  // Common practice, no source.
  'fall-in-last-year': {
    limits: [
      'unsupported-standing',
      'single-leg-stance',
      'eyes-closed-balance',
      'quick-change-of-position',
      'floor-transfer',
      'jumping',
    ],
    positions: [],
  },
  // Giangregorio LM et al. Too Fit To Fracture. Osteoporos Int 2014;25:821-835, and Sinaki M, Mikkelsen BA.
  // Arch Phys Med Rehabil 1984;65:593-596, for bending and twisting the spine; jumping: common practice.
  osteoporosis: {
    limits: [
      'loaded-spine-flexion',
      'end-range-spine-flexion',
      'end-range-spine-rotation',
      'jumping',
    ],
    positions: [],
  },
  // Common practice, no source: the classic precautions. How many hold depends on the way in and the surgeon.
  'recent-hip-replacement': {
    limits: [
      'hip-flexion-past-90',
      'hip-past-midline',
      'hip-end-range-rotation',
      'single-leg-stance',
      'floor-transfer',
      'jumping',
    ],
    positions: [],
  },
  // Common practice, no source.
  'recent-knee-replacement': {
    limits: ['kneeling-load', 'deep-knee-bend', 'knee-twist', 'floor-transfer', 'jumping'],
    positions: ['kneeling', 'half-kneeling', 'hands-and-knees'],
  },
  // Common practice, no source.
  'recent-shoulder-replacement': {
    limits: [
      'overhead-reach',
      'hand-behind-back',
      'shoulder-end-range-rotation',
      'arm-weight-bearing',
      'heavy-lifting',
    ],
    positions: ['hands-and-knees'],
  },
  // MacDougall JD et al. J Appl Physiol 1985;58:785-790, for straining with the breath held under heavy
  // loads; head-down: common practice.
  'high-blood-pressure': {
    limits: ['breath-hold-strain', 'heavy-lifting', 'head-down'],
    positions: [],
  },
  // Common practice, no source.
  dizziness: {
    limits: [
      'quick-change-of-position',
      'quick-head-turns',
      'head-down',
      'neck-end-range',
      'eyes-closed-balance',
      'unsupported-standing',
      'single-leg-stance',
    ],
    positions: [],
  },
  // ACOG Committee Opinion 804. Obstet Gynecol 2020;135:e178-e188, for lying flat on the back, standing still
  // for long and the risk of a fall; the rest: common practice.
  pregnancy: {
    limits: [
      'lying-flat-on-back',
      'prone-lying',
      'long-standing-still',
      'breath-hold-strain',
      'abdominal-wall-strain',
      'heavy-lifting',
      'eyes-closed-balance',
      'jumping',
    ],
    positions: ['supine', 'crook-lying', 'prone'],
  },
  // Common practice, no source.
  hernia: {
    limits: ['breath-hold-strain', 'heavy-lifting', 'abdominal-wall-strain'],
    positions: [],
  },
  // Common practice, no source.
  'knee-complaint': {
    limits: ['deep-knee-bend', 'kneeling-load', 'knee-twist', 'jumping'],
    positions: ['kneeling', 'half-kneeling', 'hands-and-knees'],
  },
  // Common practice, no source.
  'shoulder-complaint': {
    limits: [
      'overhead-reach',
      'hand-behind-back',
      'shoulder-end-range-rotation',
      'arm-weight-bearing',
    ],
    positions: [],
  },
  // Cook JL, Purdam C. Br J Sports Med 2012;46:163-168, for the end of the ankle's range; the rest:
  // common practice.
  'calf-or-achilles-complaint': {
    limits: ['calf-tendon-load', 'ankle-end-range', 'jumping'],
    positions: [],
  },
  // Common practice, no source.
  'low-back-complaint': {
    limits: [
      'loaded-spine-flexion',
      'end-range-spine-flexion',
      'end-range-spine-extension',
      'end-range-spine-rotation',
      'heavy-lifting',
    ],
    positions: [],
  },
  // Common practice, no source. Lying prone turns the head to its end.
  'neck-complaint': {
    limits: ['neck-end-range', 'neck-load', 'quick-head-turns', 'prone-lying'],
    positions: ['prone'],
  },
} as const satisfies Readonly<Record<string, ShippedConcern>>;
