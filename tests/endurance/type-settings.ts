import type { Page } from 'playwright-core';
import type { ChannelLabel, GroupId, Layout } from '../../src/system/channel';
import { factorySettings, type ProcessorSettings } from '../../src/system/processor-settings';

/** What a person reads off the list under Propose: the value of each line by its name. */
export async function readList(page: Page): Promise<Readonly<Record<string, string>>> {
  await page.evaluate(() => {
    location.hash = '#propose/list';
  });
  await page.locator('label[data-line]').first().waitFor({ timeout: 60_000 });
  const lines = await page.locator('label[data-line]').evaluateAll((labels) =>
    labels.map((label): [string, string] => {
      const parts = [...(label.querySelector('.value')?.childNodes ?? [])];
      const texts = parts.filter(({ nodeType }) => nodeType === Node.TEXT_NODE);
      const value = texts.map(({ textContent }) => textContent ?? '').join('');
      return [label.getAttribute('data-line') ?? '', value.trim()];
    }),
  );
  return Object.fromEntries(lines);
}

/**
 * The settings of a processor in which a list was typed, and everything that is not on the list as
 * it comes. Throws for a value that cannot be typed.
 */
export function typeSettings(
  list: Readonly<Record<string, string>>,
  layout: Layout,
): ProcessorSettings {
  const labels = layout.channels.map(({ label }) => label);
  const numbers = (key: string, unit: string) =>
    Object.fromEntries(
      labels.map((label): [ChannelLabel, number] => [
        label,
        numberOf(list[`${key} ${label}`] ?? '', unit),
      ]),
    );
  const groups = [...new Set(layout.channels.map(({ group }) => group))];
  const crossovers = groups.flatMap((group): [GroupId, number | null][] => {
    const text = list[`crossover ${group}`];
    if (text === undefined) return [];
    return [[group, text === 'full range' ? null : numberOf(text, 'Hz')]];
  });
  return {
    ...factorySettings,
    distanceMetres: numbers('distance', 'm'),
    trimDb: numbers('level', 'dB'),
    crossoverHz: Object.fromEntries(crossovers),
    inverted: labels.filter((label) => list[`polarity ${label}`] === 'inverted'),
  };
}

function numberOf(text: string, unit: string): number {
  const found = /^([+-]?\d+(?:\.\d+)?)\s(\S+)$/.exec(text.replace('−', '-'));
  if (!found || found[2] !== unit) throw new Error(`“${text}” cannot be typed as ${unit}`);
  return Number(found[1]);
}
