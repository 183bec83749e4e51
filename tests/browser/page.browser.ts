import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBrowser, violations } from './browser.js';

const wide = { width: 1280, height: 900 };
const narrow = { width: 360, height: 740 };
const looks = [
  { name: 'wide, light', viewport: wide, colorScheme: 'light' },
  { name: 'wide, dark', viewport: wide, colorScheme: 'dark' },
  { name: '360 px, light', viewport: narrow, colorScheme: 'light' },
  { name: '360 px, dark', viewport: narrow, colorScheme: 'dark' },
] as const;

describe.each(looks)('the worksheet, $name', ({ viewport, colorScheme }) => {
  let browser: Awaited<ReturnType<typeof openBrowser>>;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser({ viewport, colorScheme });
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    page = await browser.open('page');
  });

  const shown = async (id: string): Promise<string> => (await page.locator(`#${id}`).innerText()).trim();
  const figures = () =>
    Promise.all(['occlusion', 'target', 'load', 'restriction'].map((name) => shown(`answer-${name}`)));
  const pick = (name: string, value: string) => page.check(`input[name="${name}"][value="${value}"]`);
  /** Left edge and width of blocks of the timeline, in seconds of a session of so long. */
  const blocks = (kind: 'set' | 'cuff', lastsS: number): Promise<number[][]> =>
    page.locator(`#timeline rect.${kind}`).evaluateAll((rects, lasts) => {
      const lines = Array.from(document.querySelectorAll('#timeline line.grid'));
      const start = Number(lines[0]!.getAttribute('x1'));
      const whole = document.querySelector('#timeline svg')!.getAttribute('viewBox')!.split(' ').map(Number)[2]!;
      const perSecond = (whole - 2 * start) / lasts;
      return rects.map((rect) =>
        ['x', 'width'].map((side) =>
          Math.round((Number(rect.getAttribute(side)) - (side === 'x' ? start : 0)) / perSecond),
        ),
      );
    }, lastsS);

  // Half of a measured 180 is 90. 20 × 36 / (37 − 10) = 26.67; 30 % is 8.0, nearest 2.5 kg step 7.5. 75 × 4 s and three
  // rests of 30 s make 390 s.
  it('shows the answers of the readings it starts with', async () => {
    expect(await figures()).toEqual(['180 mmHg', '90 mmHg', '7.5 kg', '6:30 min']);
    expect(await shown('totals')).toBe(
      '75 repetitions · volume load 562.5 kg · time under tension 5:00 · longest unbroken restriction 6:30',
    );
    expect(await shown('grade')).toContain('Method measured-doppler, derived');
    expect(await shown('occlusion-name')).toBe('Occlusion pressure, measured');
  });

  // 50 % of 180 is 90; 7.5 of a maximum of 26.67 is 28.1 %.
  it('writes the prescription as one sentence, and weighs load against minutes in a strip', async () => {
    expect(await shown('prescription')).toBe(
      'Left leg, cuff 10 cm wide: 90 mmHg (50 % of 180 mmHg, measured seated). Leg extension, seated: 7.5 kg (28 % of 1RM), 30 – 15 – 15 – 15 repetitions, 30 s rest between sets, cuff stays inflated in the rests.',
    );
    const strip = page.locator('#trade svg');
    expect(await strip.getAttribute('aria-label')).toBe(
      'On the joint 7.5 kg, 28 % of 1RM. Under the cuff 6:30 min, 50 % of LOP.',
    );
    const widths = (selector: string) =>
      strip.locator(selector).evaluateAll((bars) => bars.map((bar) => Number(bar.getAttribute('width'))));
    const room = (await strip.evaluate((svg) => Number(svg.getAttribute('viewBox')!.split(' ')[2]))) / 2 - 14;
    // 28.125 of 100 %, and 6.5 of 20 min.
    expect((await widths('rect.load'))[0]! / room).toBeCloseTo(0.28125, 4);
    expect((await widths('rect.setting'))[0]! / room).toBeCloseTo(6.5 / 20, 4);
    // Every word of it is in sight.
    const outside = await strip.evaluate((svg) => {
      const box = svg.getBoundingClientRect();
      return Array.from(svg.querySelectorAll('text'), (text) => text.getBoundingClientRect()).filter(
        ({ left, right }) => left < box.left || right > box.right,
      ).length;
    });
    expect(outside).toBe(0);
  });

  // From 7.5 to 12.5 kg; 75 repetitions to 24; 390 s to none.
  it('compares a session with one that was kept, as an outline and in four lines', async () => {
    await page.click('#keep');
    await page.fill('#percentOneRepMax', '50');
    await page.fill('#scheme', '3x8');
    await pick('restriction', 'none');
    expect(await page.locator('#trade rect.kept').count()).toBe(2);
    const lines = await page.locator('#compared dl > div').allInnerTexts();
    expect(lines.map((line) => line.replace(/\s+/g, ' '))).toEqual([
      'On the joint peak load 7.5 kg → 12.5 kg; 28 % → 47 % of 1RM',
      'Work 75 repetitions → 24 repetitions; volume load 562.5 kg → 300 kg',
      'Under the cuff inflated 6:30 min → 0:00 min; 50 % → 0 % of LOP; longest 6:30 min → 0:00 min',
      'Not known whether the two have an equal effect',
    ]);
    expect(await violations(page)).toEqual([]);
  });

  it('puts sessions into weeks, and draws that load rises and the cuff falls', async () => {
    const add = async (more: Record<string, string>) => {
      for (const [field, value] of Object.entries(more)) await page.fill(`#${field}`, value);
      await page.click('#add');
    };
    expect(await page.locator('#weeks').isVisible()).toBe(false);
    await add({ percentOneRepMax: '20' });
    await add({ percentOneRepMax: '30', times: '3' });
    await page.check('#deload');
    await add({ percentLop: '40', times: '1' });
    await add({ scheme: '3x8', percentOneRepMax: '70' });
    // 5, 7.5, 7.5 and 17.5 of 26.67 kg; two, three and one times 6:30 min, and 96 s and two rests of 30 s.
    expect(await page.locator('#weeks-chart svg').getAttribute('aria-label')).toBe(
      'week 1: 19 % of 1RM, 13:00 min under the cuff; week 2: 28 % of 1RM, 19:30 min under the cuff; week 3, lighter on purpose: 28 % of 1RM, 6:30 min under the cuff; week 4: 66 % of 1RM, 2:36 min under the cuff.',
    );
    const heights = (look: string) =>
      page
        .locator(`#weeks-chart rect.${look}`)
        .evaluateAll((bars) => bars.map((bar) => Number(bar.getAttribute('height'))));
    const [up, down] = [await heights('load'), await heights('setting')];
    expect(up[3]! / up[0]!).toBeCloseTo(17.5 / 5, 4);
    expect(down.map((high) => high / down[1]!)).toEqual([13, 19.5, 6.5, 2.6].map((min) => expect.closeTo(min / 19.5)));
    expect(await page.locator('#weeks-chart rect.deload').count()).toBe(2);
    expect(await shown('weeks-cautions')).toContain('load goes up by 37.5 points of 1RM from week 2 to week 4');
    expect(await violations(page)).toEqual([]);
    // A week is missing: it is asked for, and no chart is drawn over the gap.
    await page.locator('#planned .remove').nth(1).click();
    expect(await shown('weeks-error')).toBe('Put a session into week 2 too.');
    expect(await page.locator('#weeks').isVisible()).toBe(false);
  });

  it('has a card that prints on one page of A6, with the limb, the side and the day', async () => {
    await page.fill('#date', '2026-03-02');
    await page.fill('#label', 'Athlete K');
    expect(await shown('card-head')).toBe('2026-03-02 · Athlete K · left leg');
    const card = await shown('card');
    for (const part of ['2026-03-02, Athlete K', '1. leg extension, left leg', '90 mmHg', '10 cm wide', '7.5 kg'])
      expect(card).toContain(part);
    expect(card).toMatch(/Posture\s+seated/);
    expect(card).toMatch(/☐ 30 +☐ 15 +☐ 15 +☐ 15/);
    expect(await page.locator('#card .stop-criteria li').count()).toBe(13);
    expect(await page.locator('#card .stop-criteria h3').allTextContents()).toHaveLength(3);
    const pdf = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
    expect(/\/Count (\d+)/.exec(pdf)![1]).toBe('1');
    const [wide, high] = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(pdf)!.slice(1).map(Number);
    // 72 points an inch of 25.4 mm, to a pixel.
    expect(Math.abs(wide! - (105 * 72) / 25.4)).toBeLessThan(1);
    expect(Math.abs(high! - (148 * 72) / 25.4)).toBeLessThan(1);
    await page.emulateMedia({ media: 'print' });
    for (const part of ['header', 'form', '.prescription', '#working-pressure'])
      expect(await page.locator(part).first().isVisible()).toBe(false);
    expect(await page.locator('#card').isVisible()).toBe(true);
    // Nothing is printed of a session that is stopped but the stop.
    await page.emulateMedia({ media: 'screen' });
    await page.fill('#systolicMmHg', '185');
    await page.emulateMedia({ media: 'print' });
    expect(await shown('card')).toMatch(/Do not train/);
    expect(await shown('card')).not.toMatch(/90 mmHg|7\.5 kg|☐/);
    await page.emulateMedia({ media: 'screen' });
  });

  it('has targets of at least 44 px to touch', async () => {
    await page.locator('details').evaluateAll((all) => all.forEach((one) => one.setAttribute('open', '')));
    await page.click('#add');
    const small = await page.evaluate(() => {
      const targets = Array.from(document.querySelectorAll('button, summary, label:has(input), input'));
      return targets.flatMap((one) => {
        // What belongs to a label is touched with it.
        const { width, height } = (one.closest('label') ?? one).getBoundingClientRect();
        return width > 0 && (width < 43.9 || height < 43.9)
          ? [`${one.outerHTML.slice(0, 80)}: ${width} × ${height}`]
          : [];
      });
    });
    expect(small).toEqual([]);
  });

  it('draws the pooled curve with its band and the published means where it estimates, other equations folded', async () => {
    expect(await page.locator('#curve-section').isVisible()).toBe(false);
    await pick('known', 'estimated');
    expect(await page.locator('#curve-chart path').count()).toBe(2);
    // Known widths, lying down or not stated: 5, 5, 13, 13.5, 18 and 18 cm.
    expect(await page.locator('#curve-chart circle').count()).toBe(6);
    expect(await page.locator('#others').isVisible()).toBe(false);
    await page.locator('#curve-section summary').click();
    expect(await page.locator('#others tr td:first-child').allInnerTexts()).toContain('width-ratio-1993');
  });

  it('asks first whether the pressure was measured, and then for what that needs', async () => {
    const first = page.locator('form input').first();
    expect(await first.getAttribute('name')).toBe('known');
    expect(await first.isChecked()).toBe(true);
    const seen = (field: string) => page.locator(`#${field}`).isVisible();
    expect([await seen('measuredMmHg'), await seen('circumferenceCm')]).toEqual([true, false]);
    await pick('known', 'estimated');
    expect([await seen('measuredMmHg'), await seen('circumferenceCm')]).toEqual([false, true]);
    expect(await shown('occlusion-name')).toBe('Occlusion pressure, estimated');
    expect(await shown('grade')).toMatch(/^Equation /);
    expect(await shown('cautions')).toContain('estimated occlusion pressure');
  });

  it('shows the 95 % interval of the pressure as a band, that of the share as a range, and none on the gauge', async () => {
    const ends = async (id: string) => {
      const label = await page.locator(`#${id} svg`).getAttribute('aria-label');
      return [...label!.matchAll(/95 % interval (\d+)–(\d+) mmHg/g)].map((match) => match.slice(1).map(Number));
    };
    const [pressure] = await ends('pressure-chart');
    // The setting is a mark.
    const setting = page.locator('#pressure-chart rect.band.setting');
    expect(Number(await setting.getAttribute('width'))).toBe(0);
    expect(Number(await page.locator('#percent-chart rect.band.setting').getAttribute('width'))).toBeGreaterThan(5);
    // Log-normal, of whole numbers: the middle is geometric.
    expect(Math.sqrt(pressure![0]! * pressure![1]!)).toBeCloseTo(180, 0);
    expect(pressure![1]!).toBeGreaterThan(190);
    expect(await shown('occlusion-range')).toBe(`95 % interval ${pressure![0]}–${pressure![1]} mmHg`);
    // 90 mmHg as a share of the ends of the interval, which are shown as whole numbers.
    const shares = /^50 % of LOP; 95 % interval (\d+)–(\d+) %$/
      .exec(await shown('target-range'))!
      .slice(1)
      .map(Number);
    for (const [share, end] of [
      [shares[0]!, pressure![1]!],
      [shares[1]!, pressure![0]!],
    ] as const) {
      expect(share).toBeGreaterThanOrEqual(Math.floor(9000 / (end + 0.5)));
      expect(share).toBeLessThanOrEqual(Math.ceil(9000 / (end - 0.5)));
    }
  });

  it('draws the bands where the numbers are', async () => {
    const [band, mark, scale] = await page.locator('#pressure-chart svg').evaluate((svg) => {
      const read = (selector: string, names: string[]) =>
        names.map((name) => Number(svg.querySelector(selector)!.getAttribute(name)));
      const lines = Array.from(svg.querySelectorAll('line.grid'), (line) => Number(line.getAttribute('x1')));
      const last = Number(/\d+/.exec(Array.from(svg.querySelectorAll('text.scale')).at(-1)!.textContent!)![0]);
      return [
        read('.band.pressure', ['x', 'width']),
        read('.mark.pressure', ['x', 'width']),
        [lines[0], lines.at(-1), last],
      ];
    });
    const [zero, end, last] = scale as [number, number, number];
    const value = (x: number) => ((x - zero) / (end - zero)) * last;
    const [low, high] = (await shown('occlusion-range')).match(/\d+/g)!.slice(1).map(Number);
    expect(Math.abs(value(band![0]!) - low!)).toBeLessThanOrEqual(0.5);
    expect(Math.abs(value(band![0]! + band![1]!) - high!)).toBeLessThanOrEqual(0.5);
    expect(value(mark![0]! + mark![1]! / 2)).toBeCloseTo(180, 1);
  });

  // Half of 200 is 100, 70 % of it 140; a gauge in steps of 50 mmHg leaves 100.
  it('follows what is typed', async () => {
    await page.fill('#measuredMmHg', '200');
    expect((await figures()).slice(0, 2)).toEqual(['200 mmHg', '100 mmHg']);
    await page.fill('#percentLop', '70');
    expect((await figures())[1]).toBe('140 mmHg');
    await page.fill('#gaugeStepMmHg', '50');
    expect((await figures())[1]).toBe('100 mmHg');
    // 30 % of a maximum of 40 × 36 / 27 = 53.33 is 16; nearest 5 kg step 15.
    await page.fill('#load', '40');
    await page.fill('#step', '5');
    expect((await figures())[2]).toBe('15 kg');
  });

  it('follows the slider, and the keys in its steps', async () => {
    await page.locator('[data-field="measuredMmHg"] input[type="range"]').fill('220');
    expect(await page.inputValue('#measuredMmHg')).toBe('220');
    expect((await figures())[0]).toBe('220 mmHg');
    await page.focus('#measuredMmHg');
    await page.keyboard.press('ArrowUp');
    expect((await figures())[0]).toBe('221 mmHg');
    expect(await page.inputValue('[data-field="measuredMmHg"] input[type="range"]')).toBe('221');
  });
  it('takes the posture and the cuff of the measurement, and says what another one changes', async () => {
    const remarks = async (): Promise<string> => (await page.locator('#practitioner').textContent())!;
    const before = await remarks();
    await pick('measuredPosture', 'supine');
    expect(await remarks()).not.toBe(before);
    expect(await remarks()).toMatch(/supine/);
    await pick('measuredPosture', 'seated');
    await page.fill('#measuredWidthCm', '12');
    // A narrower cuff needs more pressure than the one it was measured with.
    expect(parseFloat((await figures())[0]!)).toBeGreaterThan(180);
    // From 18 cm, seated, the conversion spans more than a factor of 2.5.
    await page.fill('#measuredWidthCm', '18');
    expect((await figures())[0]).toBe('–');
    expect(await shown('measuredWidthCm-error')).toContain('spans at most a factor of 2.5');
  });

  // Sets of 30 and 15 repetitions of 4 s with 30 s between them: 0–120, 150–210, 240–300, 330–390 s.
  it('draws the clock of the session', async () => {
    const sets = [
      [0, 120],
      [150, 60],
      [240, 60],
      [330, 60],
    ];
    expect(await blocks('set', 390)).toEqual(sets);
    expect(await blocks('cuff', 390)).toEqual([[0, 390]]);
    await pick('restriction', 'intermittent');
    expect(await blocks('cuff', 390)).toEqual(sets);
    expect((await figures())[3]).toBe('5:00 min');
    await pick('restriction', 'none');
    expect(await blocks('cuff', 390)).toEqual([]);
    expect((await figures()).slice(1)).toEqual(['no cuff', '7.5 kg', '0:00 min']);
    // Three sets of ten: 3 × 40 s and two rests of 60 s.
    await page.fill('#scheme', '3x10');
    await page.fill('#restS', '60');
    expect(await blocks('set', 240)).toEqual([
      [0, 40],
      [100, 40],
      [200, 40],
    ]);
    await page.getByText('The clock as a table').click();
    expect(await page.locator('#clock tr').allInnerTexts()).toEqual(
      [
        '0:00 set 1: 10 repetitions',
        '0:40 rest',
        '1:40 set 2: 10 repetitions',
        '2:20 rest',
        '3:20 set 3: 10 repetitions',
        '4:00 end',
      ].map((row) => row.replace(' ', '\t')),
    );
  });
  it('keeps what is always said in sight, and shows no setting while there is a stop', async () => {
    expect(await shown('standing')).toContain('It does not clear anyone to train.');
    expect(await page.locator('#stop li').count()).toBeGreaterThan(5);
    expect(await shown('always')).toContain('Screen before the first session');
    expect(await page.locator('#stops').isVisible()).toBe(false);
    await page.fill('#systolicMmHg', '185');
    expect(await shown('stops')).toMatch(/^Do not train\s+Blood pressure 185\/70 mmHg/);
    // It is in sight where the reading is typed, before the form, and nothing in bold below it could be set.
    const box = (await page.locator('#stops').boundingBox())!;
    expect(box.y).toBeGreaterThanOrEqual(0);
    expect(box.y).toBeLessThan(viewport.height / 2);
    for (const id of [
      'prescription',
      'answer-target',
      'answer-load',
      'cautions',
      'pressure-chart',
      'timeline',
      'working-pressure',
    ])
      expect(await page.locator(`#${id}`).isVisible()).toBe(false);
    const answers = await page.locator('.answers').innerText();
    expect(answers.replace(/blood pressure 185\/70 mmHg/gi, '')).not.toMatch(/\d (mmHg|kg)/);
    await expect.poll(() => page.locator('#status').textContent()).toMatch(/^Do not train\. Blood pressure/);
    expect(await violations(page)).toEqual([]);
    await page.fill('#systolicMmHg', '');
    expect(await page.locator('#stops').isVisible()).toBe(false);
    for (const id of ['standing', 'stop', 'always']) expect(await page.locator(`#${id}`).isVisible()).toBe(true);
    expect(await page.locator('body').innerText()).not.toMatch(/\bsafe\b|\bcleared\b/i);
  });

  it('says beside the field what is wrong with it, and gives no number then', async () => {
    const wrong = async (field: string): Promise<string> => {
      expect(await page.getAttribute(`#${field}`, 'aria-invalid')).toBe('true');
      const described = (await page.getAttribute(`#${field}`, 'aria-describedby'))!.split(' ');
      expect(described).toContain(`${field}-error`);
      return shown(`${field}-error`);
    };
    await pick('known', 'estimated');
    await page.fill('#circumferenceCm', '21.5');
    // 21.5 × 2.54 = 54.61.
    expect(await wrong('circumferenceCm')).toBe(
      'Limb circumference must be a number from 25 to 120 cm; received 21.5. If that was inches, it is 54.61 cm here.',
    );
    expect(await figures()).toEqual(['–', '–', '–', '–']);
    expect(await page.locator('.worked:visible').count()).toBe(0);
    await page.fill('#circumferenceCm', '54');
    await page.fill('#systolicMmHg', '70');
    await page.fill('#diastolicMmHg', '120');
    expect(await wrong('systolicMmHg')).toContain('Are the systolic and diastolic pressures swapped?');
    await page.fill('#diastolicMmHg', '');
    expect(await wrong('diastolicMmHg')).toContain(
      'Diastolic pressure is missing: it must be a number from 30 to 200 mmHg.',
    );
    await page.fill('#scheme', 'lots');
    expect(await wrong('scheme')).toContain("such as '30-15-15-15'");
    await expect.poll(() => shown('status')).toMatch(/^No answer: look at .*Diastolic pressure.*\.$/);
    expect(await violations(page)).toEqual([]);
    await page.fill('#systolicMmHg', '120');
    await page.fill('#diastolicMmHg', '70');
    await page.fill('#scheme', '30-15-15-15');
    expect((await figures())[0]).toMatch(/^\d+ mmHg$/);
    expect(await page.locator('[aria-invalid]').count()).toBe(0);
  });

  it('says the answers aloud once the hand has come to rest', async () => {
    for (const value of ['170', '190', '200']) await page.fill('#measuredMmHg', value);
    expect(await page.getAttribute('#status', 'role')).toBe('status');
    await expect
      .poll(() => page.locator('#status').textContent())
      .toBe('Occlusion pressure 200 mmHg, cuff 100 mmHg, load 7.5 kg, restriction 6:30 min.');
  });

  it('is used by keyboard alone, each stop in sight with a ring around it', async () => {
    const stops: string[] = [];
    for (let count = 0; count < 60; count += 1) {
      await page.keyboard.press('Tab');
      const stop = await page.evaluate(() => {
        const focused = document.activeElement as HTMLElement;
        const { outlineStyle, outlineWidth } = getComputedStyle(focused);
        const box = focused.getBoundingClientRect();
        const above = document.elementFromPoint(box.x + box.width / 2, box.y + Math.min(box.height / 2, 20));
        return {
          name: focused.getAttribute('name') ?? focused.textContent!.slice(0, 24).trim(),
          body: focused === document.body,
          ring: outlineStyle !== 'none' && parseFloat(outlineWidth) >= 2,
          seen: above !== null && (focused.contains(above) || above.contains(focused)),
        };
      });
      if (stop.body) break;
      expect(stop).toMatchObject({ ring: true, seen: true });
      // A date has its parts and its calendar one by one.
      if (stops.at(-1) !== stop.name) stops.push(stop.name);
    }
    expect(stops.slice(0, 27)).toEqual([
      ...['known', 'measuredMmHg', 'method', 'measuredWidthCm', 'measuredPosture'],
      ...['limb', 'side', 'posture', 'cuffWidthCm'],
      ...['label', 'date', 'systolicMmHg', 'diastolicMmHg', 'ageYears', 'sex', 'percentLop', 'gaugeStepMmHg'],
      ...['exercise', 'load', 'repetitions', 'repetitionsInReserve', 'percentOneRepMax', 'step'],
      ...['scheme', 'concentricS', 'eccentricS', 'restS'],
    ]);
    expect(stops.slice(27)).toContain('The clock as a table');
    await page.focus('input[name="posture"]:checked');
    await page.keyboard.press('ArrowRight');
    expect(await page.isChecked('input[name="posture"][value="standing"]')).toBe(true);
  });

  it('shows the working with its fractions', async () => {
    const formula = page.locator('#working-pressure mfrac', { hasText: '100' });
    expect(await formula.first().isVisible()).toBe(true);
    expect(await page.locator('#working-pressure').innerText()).toContain('Limb occlusion pressure: 180 mmHg');
  });

  it('has no violation that axe finds, its parts folded or unfolded', async () => {
    expect(await violations(page)).toEqual([]);
    await page.locator('details').evaluateAll((all) => all.forEach((one) => one.setAttribute('open', '')));
    expect(await violations(page)).toEqual([]);
  });

  it('fits its width, keeps the answers in sight, and takes the colours asked for', async () => {
    const body = page.locator('body');
    expect(await page.evaluate(() => document.documentElement.scrollWidth)).toBeLessThanOrEqual(viewport.width);
    await page.locator('#restS').scrollIntoViewIfNeeded();
    const box = (await page.locator('#prescription').boundingBox())!;
    expect(box.y).toBeGreaterThanOrEqual(0);
    expect(box.y + box.height).toBeLessThan(viewport.height);
    const [red] = (await body.evaluate((element) => getComputedStyle(element).backgroundColor)).match(/\d+/g)!;
    if (colorScheme === 'dark') expect(Number(red)).toBeLessThan(60);
    else expect(Number(red)).toBeGreaterThan(200);
  });

  it('asks no other host, and logs no complaint', () => {
    expect(browser.elsewhere).toEqual([]);
    expect(browser.complaints).toEqual([]);
  });
});
