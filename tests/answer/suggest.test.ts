import { describe, expect, it } from 'vitest';
import { likeliest, suggest } from '../../src/answer/suggest.js';

// Edits are those of Damerau and Levenshtein: a letter put in, taken out, changed, or swapped with the next one.
describe('suggestions for a name', () => {
  // Eight letters allow two edits.
  const asked = 'abcdefgh';
  it.each([
    ['the same letters, however written', 'AbcDefGh', true],
    ['a letter changed', 'xbcdefgh', true],
    ['the last one changed', 'xbcdefgx', true],
    ['a letter left out', 'bcdefgh', true],
    ['the first two left out', 'cdefgh', true],
    ['a letter too many', 'axbcdefgh', true],
    ['two too many', 'axbcdexfgh', true],
    ['two swapped', 'bacdefgh', true],
    ['two pairs swapped', 'bacdefhg', true],
    ['a swap and a change', 'bacdefgx', true],
    ['two in the middle swapped', 'xbcedfgh', true],
    ['three changed', 'xyzdefgh', false],
    ['three left out', 'defgh', false],
    ['a swap and two changes', 'bacdefxy', false],
    ['three pairs swapped', 'badcefhg', false],
    ['letters swapped that are apart, and a change', 'cbadxfgh', false],
    ['three too many', 'axbxcdexfgh', false],
    ['nothing alike', 'qrstuvwx', false],
  ])('%s: %s', (_what, option, found) => {
    expect(suggest(asked, [option])).toEqual(found ? [option] : []);
  });

  it('are the likeliest first, and in their order where they are as likely', () => {
    const options = ['xycdefgh', 'bacdefgh', 'abcdefghijklmnop', 'xbcdefgh', 'abcdefgh', 'abcdefghijk', 'abcd'];
    const found = suggest(asked, options);
    expect(found).toEqual(['abcdefgh', 'bacdefgh', 'xbcdefgh', 'xycdefgh', 'abcdefghijk']);
    expect(likeliest(asked, found)).toEqual(['abcdefgh']);
    expect(likeliest(asked, found.slice(1))).toEqual(['bacdefgh', 'xbcdefgh']);
    expect([likeliest(asked, []), likeliest(asked)]).toEqual([[], []]);
  });

  it('are what begins or ends as it, the nearest length first', () => {
    expect(suggest('pain', ['pain-between-sets', 'chest-pain', 'pain-at-rest'])).toEqual([
      'pain-at-rest',
      'pain-between-sets',
    ]);
    expect(suggest('chest-pain', ['symptom-chest-pain', 'symptom-tingling'])).toEqual(['symptom-chest-pain']);
    expect(suggest('circumferenceOfThigh', ['circumferenceCm'])).toEqual(['circumferenceCm']);
    // Two letters are no beginning, and four no end.
    expect(suggest('ci', ['circumferenceCm'])).toEqual([]);
    expect(suggest('cir', ['circumferenceCm'])).toEqual(['circumferenceCm']);
    expect(suggest('width', ['cuffWidthX'])).toEqual([]);
  });

  it('leave the unit of a field aside, and count letters and digits alone', () => {
    expect(suggest('circumfrence', ['circumferenceCm'])).toEqual(['circumferenceCm']);
    expect(suggest('diastolik', ['diastolicMmHg'])).toEqual(['diastolicMmHg']);
    expect(suggest('loadMas', ['loadMassKg'])).toEqual(['loadMassKg']);
    expect(suggest('est', ['restS'])).toEqual([]);
    expect(suggest('rest', ['restS'])).toEqual(['restS']);
    expect(suggest('Bench press', ['bench-press'])).toEqual(['bench-press']);
    // Of a unit within a name nothing is left out.
    expect(suggest('xrestxx', ['xKgrestxx'])).toEqual([]);
  });

  it('are none for what is no text, and look at forty letters at most', () => {
    expect([suggest(5, ['5']), suggest(undefined, ['undefined'])]).toEqual([[], []]);
    const long = 'x'.repeat(40);
    expect(suggest(`${long}${'y'.repeat(400)}`, [long])).toEqual([long]);
  });
});
