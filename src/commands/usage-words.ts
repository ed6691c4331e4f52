// What was wrong with a command line, in plain words. The parser's own sentences speak of arguments and
// of allowed choices.
import { listed } from '../check/wording.ts';
import { nearest } from '../load/did-you-mean.ts';

/** What a command takes, as its help names it. */
export interface Taken {
  readonly name: string;
  readonly description: string;
}

/** The sentence for what the parser said; `command` is the one that was given, with what it takes. */
export function usageSentence(said: string, command: string, takes: readonly Taken[]): string {
  const text = said.replace(/^error: /, '').trim();
  for (const [pattern, words] of SENTENCES) {
    const match = pattern.exec(text);
    if (match) return words(match, command, takes);
  }
  return text;
}

type InWords = (match: RegExpExecArray, command: string, takes: readonly Taken[]) => string;

const SENTENCES: readonly (readonly [RegExp, InWords])[] = [
  [
    /^missing required argument '(.+)'$/,
    ([, name = ''], command, takes) => {
      const what = takes.find((one) => one.name === name)?.description;
      return `"carryover ${command}" has to be told ${what ? `${what}: ` : ''}carryover ${command} ${takes.map((one) => `<${one.name}>`).join(' ')}`;
    },
  ],
  [
    /^command-argument value '(.*)' is invalid for argument '.+'\. Allowed choices are (.+)\.$/,
    ([, value = '', choices = '']) => `"${value}" cannot be used here${chosenOf(value, choices)}`,
  ],
  [
    /^option '(?:-\w, )?(--\S+).*' argument '(.*)' is invalid\. Allowed choices are (.+)\.$/,
    ([, option = '', value = '', choices = '']) =>
      `"${option} ${value}" cannot be used${chosenOf(value, choices)}`,
  ],
  [
    /^option '(?:-\w, )?((--\S+).*)' argument missing$/,
    ([, form = '', option = '']) => `"${option}" needs something after it: ${form}`,
  ],
  [
    /^unknown option '(.+?)'(?:\s+\(Did you mean (.+)\?\))?$/,
    ([, option = '', near], command) =>
      `${command === '' ? 'there is' : `"carryover ${command}" has`} no option "${option}"${meant(near) || seeHelp(command)}`,
  ],
  [
    /^unknown command '(.+?)'(?:\s+\(Did you mean (.+)\?\))?$/,
    ([, word = '', near], command) =>
      `${command === 'list' ? '"carryover list" has' : 'there is'} no command "${word}"${meant(near) || '; "carryover help" lists them all'}`,
  ],
  [
    /^too many arguments/,
    (_, command, takes) => {
      const all = takes.map((one) => ` <${one.name}>`).join('');
      return `there is a word too many: carryover ${command}${all}`;
    },
  ],
];

/** What it may be, and where one is near, that one. A side is never guessed. */
function chosenOf(value: string, choices: string): string {
  const all = choices.split(', ');
  return `; write ${listed(all, 'or')}${meant(nearest(value, all))}`;
}

/** Several come as "one of a, b". */
function meant(near: string | undefined): string {
  if (near === undefined) return '';
  const all = near.replace(/^one of /, '').split(', ');
  return `; did you mean ${all.map((one) => `"${one}"`).join(' or ')}?`;
}

function seeHelp(command: string): string {
  const [name = ''] = command.split(' ');
  return `; "carryover help${name === '' ? '' : ` ${name}`}" lists what there is`;
}
