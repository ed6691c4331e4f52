// Is everything on a sheet in its language? A sheet in another language than the practice's needs the plan,
// its exercises and what the practice says in that language. Asked of all plans at once, so that one
// thing that is not there is told of once, for all the sheets that it costs.
import { type Finding, finding } from '../finding/finding.ts';
import type { Exercise } from '../model/exercise.ts';
import type { Plan } from '../model/plan.ts';
import type { Practice } from '../model/practice.ts';
import { asSet } from './plan-checks.ts';
import { practiceTexts } from './practice-texts.ts';
import type { PlanInLanguage } from './sheet-parts.ts';
import { needlessTranslation } from './translated-exercise.ts';

/** `known` are the languages with a words pack; of another one nothing more is asked. */
export function sheetLanguages(
  practice: Practice,
  plans: readonly PlanInLanguage[],
  known: readonly string[],
): readonly Finding[] {
  const others = new Set(plans.map(({ language }) => language));
  others.delete(practice.language);
  const lacking = [...others].flatMap((language) => {
    const ofLanguage = plans.filter((one) => one.language === language);
    if (!known.includes(language)) return [];
    return [
      ...ofLanguage.flatMap(undeclared),
      ...untranslated(ofLanguage, language),
      ...practiceTexts(practice, ofLanguage, language),
    ];
  });
  const own = practice.inLanguage.get(practice.language);
  const needless = own ? [needlessTranslation(own.place, practice.language)] : [];
  return asSet([...lacking, ...needless], practice);
}

/** A plan whose sheet is in another language because people.yaml says so alone: its own words may not be. */
function undeclared({ plan, language }: PlanInLanguage): readonly Finding[] {
  if (plan.handoutLanguage !== null) return [];
  return [
    finding({
      check: 'translation-missing',
      severity: 'error',
      place: plan.place,
      message: `people.yaml asks for the sheet in "${language}", but plan ${plan.id} does not say that its own words are in "${language}"; write its title, goals, notes and names in "${language}", and add "handout_language: ${language}".`,
    }),
  ];
}

/** One finding an exercise, at the first plan that needs it. */
function untranslated(plans: readonly PlanInLanguage[], language: string): readonly Finding[] {
  const exercises = new Set(plans.flatMap((one) => one.untranslated));
  return [...exercises].flatMap((exercise) => {
    const users = plans.filter((one) => one.untranslated.includes(exercise));
    const [first, ...more] = users;
    if (!first) return [];
    const file = exercise.source.file.replace(/\.yaml$/, `.${language}.yaml`);
    return [
      finding({
        check: 'translation-missing',
        severity: 'error',
        place: itemOf(first.plan, exercise)?.place ?? first.plan.place,
        message: `The sheet is in "${language}", but "${exercise.id}" has no words in "${language}"; write them in ${file}.`,
        related: [
          { message: 'The exercise.', place: exercise.place },
          ...more.map(({ plan }) => ({
            message: 'This sheet needs them too.',
            place: itemOf(plan, exercise)?.place ?? plan.place,
          })),
        ],
        alsoMisleads: more.map((one) => one.file),
      }),
    ];
  });
}

function itemOf(plan: Plan, exercise: Exercise) {
  const items = plan.sessions.flatMap(({ parts }) => parts.flatMap((part) => part.items));
  return items.find((item) => item.exercise.id === exercise.id);
}
