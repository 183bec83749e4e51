import type { Page } from 'playwright-core';
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { openBrowser, violations } from './browser.js';

describe('the React form', () => {
  let browser: Awaited<ReturnType<typeof openBrowser>>;
  let page: Page;
  beforeAll(async () => {
    browser = await openBrowser();
  });
  afterAll(() => browser.close());
  beforeEach(async () => {
    page = await browser.open('react');
  });

  const field = (path: string) => page.locator(`[id="${path}"]`);
  const submit = () => page.getByRole('button', { name: 'Plan the session' }).click();

  // Worked by hand: 74 + 1.25 × (22 + 17.9 × 56 / 10) = 226.8, seated; half is 113.4, down to 110. 25 % of 60 kg is 15 kg.
  it('plans a session', async () => {
    await submit();
    await page.getByRole('heading', { name: '110 mmHg, 15 kg' }).waitFor();
    await page.getByText('The whole plan with its working').click();
    expect(await page.getByRole('region', { name: 'The whole plan' }).innerText()).toContain('LOP = DBP + h × (');
    expect(await violations(page)).toEqual([]);
  });

  it('says beside a field what the schema finds, and takes the focus there', async () => {
    await field('limbs.0.cuffWidthCm').fill('100');
    await field('exercises.0.percentOneRepMax').fill('0.25');
    await submit();
    await page.locator('[aria-invalid="true"]').first().waitFor();
    expect(await page.locator('[aria-invalid="true"]').count()).toBe(2);
    expect(await field('limbs.0.cuffWidthCm').evaluate((element) => element === document.activeElement)).toBe(true);
    for (const path of ['limbs.0.cuffWidthCm', 'exercises.0.percentOneRepMax']) {
      expect((await page.locator(`[id="${path}-error"]`).innerText()).length).toBeGreaterThan(10);
    }
    expect(await page.getByRole('heading', { level: 2 }).count()).toBe(0);
    expect(await violations(page)).toEqual([]);
  });

  it('says what planSession finds where the schema finds nothing', async () => {
    await field('systolicMmHg').fill('74');
    await field('diastolicMmHg').fill('118');
    await submit();
    await page.getByText('Are the systolic and diastolic pressures swapped?').waitFor();
    expect(await field('systolicMmHg').getAttribute('aria-invalid')).toBe('true');
  });

  it('asks no other host, and logs no complaint', () => {
    expect(browser.elsewhere).toEqual([]);
    expect(browser.complaints).toEqual([]);
  });
});
