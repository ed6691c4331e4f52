// The files that a plan's sheet is made from, as far as they are under version control. people.yaml
// never is.
import { type Compiled, type CompiledPlan, PRACTICE_FILE } from '../build.ts';

/** Paths of the folder; `templates` stands for all below it. */
export function inputsOf({ uses }: CompiledPlan, { library }: Compiled): readonly string[] {
  const pictures = library
    .loaded()
    .filter(({ file }) => uses.includes(file))
    .flatMap(({ exercise }) => exercise?.levels ?? [])
    .flatMap(({ picture }) => picture?.file ?? []);
  return [...new Set([PRACTICE_FILE, ...uses, ...pictures, 'templates'])];
}
