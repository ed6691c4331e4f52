// What is asked of the library and of the settings: limbs against muscles, and what was left to be replaced.
import { describe, expect, it } from 'vitest';
import { limbUnlikely } from '../../src/check/limb-unlikely.ts';
import { placeholderLeft } from '../../src/check/placeholder-left.ts';
import { startingTexts } from '../../src/load/starting-texts.ts';
import type { Limb } from '../../src/model/exercise.ts';
import { exercise, messages } from './records.ts';

describe('limb-unlikely', () => {
  const told = (limb: Limb | null, prime: string[], assist: string[] = []) =>
    messages(limbUnlikely([exercise('turn-out', { limb, muscles: { prime, assist } })]));

  it('asks where all muscles are of the other half', () => {
    expect(told('leg', ['infraspinatus', 'teres-minor'], ['deltoid'])).toEqual([
      '"limb: leg" is what the sheet calls a side, and all that this exercise works is "infraspinatus", "teres-minor" and "deltoid"; is a side rather called arm, hand or shoulder?',
    ]);
    expect(told('hand', ['soleus'])).toHaveLength(1);
  });

  it.each<[string, Limb | null, string[], string[]]>([
    ['the muscles fit', 'leg', ['soleus'], []],
    ['one fits', 'arm', ['deltoid'], ['gluteus-maximus']],
    ['one is of the trunk', 'leg', ['deltoid'], ['multifidus']],
    ['one is the practice’s own', 'leg', ['deltoid', 'own-muscle'], []],
    ['no muscle is named', 'leg', [], []],
    ['the limb is of neither half', 'side', ['deltoid'], []],
    ['no limb is named', null, ['deltoid'], []],
  ])('is silent where %s', (_, limb, prime, assist) => {
    expect(told(limb, prime, assist)).toEqual([]);
  });

  it('tells of an exercise once', () => {
    const wrong = { limb: 'leg', muscles: { prime: ['deltoid'], assist: [] } } as const;
    expect(limbUnlikely([exercise('turn-out', wrong, wrong)])).toHaveLength(1);
  });
});

describe('placeholder-left', () => {
  const marked = (text: string, file = 'practice.yaml') =>
    placeholderLeft([{ file, text }], startingTexts()).map(({ place }) =>
      text.slice(place.start, place.end),
    );

  it('knows the texts that ship to be replaced', () => {
    expect(startingTexts()).toEqual([
      'Your practice',
      'Your telephone number and hours',
      'your local emergency number',
      'Your name, your profession',
    ]);
  });

  it.each([
    ['practice: Ours (replace this)', ['(replace this)']],
    ['practice: Your practice', ['Your practice']],
    ['contact: "Your telephone number and hours"', ['Your telephone number and hours']],
    ['emergency: Call your local emergency number.', ['your local emergency number']],
    ['practitioners:\n  me: "Your name, your profession"', ['Your name, your profession']],
    ['practitioners: {me: "Your name, your profession"}', ['Your name, your profession']],
    ['practice: Your practice\r\ncontact: x', ['Your practice']],
    ['practice: Your practice  # to do', ['Your practice']],
    ['practice: Your practice nurse', []],
    ['practice: Ours', []],
    ['# practice: Your practice', []],
    ['# (replace this)', []],
    ['get_in_touch:\n  - You want to ring your practice', []],
  ])('%j', (text, found) => {
    expect(marked(text)).toEqual(found);
  });

  it('looks for bare texts in the settings alone', () => {
    expect(marked('note: Your practice', 'plans/A-1.yaml')).toEqual([]);
    expect(marked('note: x (replace this)', 'plans/A-1.yaml')).toEqual(['(replace this)']);
  });
});
