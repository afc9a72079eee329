/** Units that lengths, temperatures and speeds are shown in; all else has units of its own trade. */
export type Units = 'metric' | 'imperial';

/** How texts, numbers, dates and measures are written. Plain data, so that it travels to workers. */
export interface Locale {
  /** BCP 47 tag of the language of the texts. */
  readonly language: string;
  /** BCP 47 tag whose decimal mark numbers have; their digits are always 0 to 9. */
  readonly numbers: string;
  /** BCP 47 tag that dates and times are written by: the language of the texts, and a region. */
  readonly dates: string;
  readonly units: Units;
  /** Stands between a number and its unit: on a page one that breaks no line. */
  readonly space: string;
}

/** What a person chose on this machine; null follows the browser and its region. */
export interface LocalePreferences {
  /** Tag of a language the app has. */
  readonly language: string | null;
  readonly units: Units | null;
  /** BCP 47 tag that numbers and dates are written by; units do not follow it. */
  readonly numbers: string | null;
}

export const noPreferences: LocalePreferences = { language: null, units: null, numbers: null };

/** What holds until something else is set: in the terminal, in files, before the page starts. */
export const plainLocale: Locale = {
  language: 'en',
  numbers: 'en-GB',
  dates: 'en-GB',
  units: 'metric',
  space: ' ',
};
