import { basename } from 'node:path';
import type { MicrophoneCalibration } from '../microphone/calibration';
import { parseCalibration } from '../microphone/parse-calibration';
import type { Readings } from '../reading/reading';
import { readTake } from '../reading/read-take';
import { parseInForce } from '../schema/parse-in-force';
import { parseSchedule } from '../schema/parse-schedule';
import { nothingInForce, usualFilters, type SettingsInForce } from '../system/declared-settings';
import { layoutFromName } from '../system/layout';
import type { Schedule } from '../take/schedule';
import { isTrouble, type Trouble } from '../trouble';
import { given, type Command, type CommandIo, type GivenOptions } from './command';
import { closeOptions, readClose } from './read-close';
import { inFile, readInputFile, textOf } from './input-files';
import { readCapture, type CaptureChannels } from './read-capture';
import { numberOption } from './number-option';
import { printedReadings } from './printed-readings';

/** Reference distance that is assumed when none is given, metres. */
const assumedDistanceMetres = '2.40';

/** Reads a recording of a take. */
export const readCommand: Command = {
  name: 'read',
  summary:
    'Reads the recording of a take: clock, arrivals, distances, levels, roll-offs, polarity.',
  options: [
    { name: 'take', value: 'FILE', about: 'take.json as "stimulus" saved it', required: true },
    { name: 'capture', value: 'FILE', about: 'the recording, a WAV', required: true },
    { name: 'temperature', value: 'C', about: 'of the room, -40 to 60 °C', fallback: '20' },
    {
      name: 'reference-distance',
      value: 'M',
      about: 'tape distance of the reference speaker, 0.1 to 30 m; else 2.40 assumed',
    },
    { name: 'capture-channel', value: 'N', about: "the microphone's channel, counted from 1" },
    {
      name: 'loopback-channel',
      value: 'N',
      about: 'the channel that carries the electrical loopback; no tape is needed then',
    },
    { name: 'calibration', value: 'FILE', about: "the microphone's calibration file" },
    {
      name: 'in-force',
      value: 'FILE',
      about: 'JSON of what the processor had in force, taken out; else taken as nothing',
    },
    ...closeOptions,
    { name: 'curves', about: 'prints responses and envelopes too' },
  ],
  notes: [
    'Prints readings that "propose" takes as they are. A number that cannot be told is null, with\na sentence in "notes"; what went wrong in a segment stands in "faults". Intervals hold 90 %.',
    'The recording may have any rate from 44.1 to 192 kHz and 8 to 64 bits.',
  ],
  run: readRecording,
};

async function readRecording(options: GivenOptions, io: CommandIo): Promise<object | Trouble> {
  const assumed = !options.has('reference-distance');
  const numbers = readNumbers(
    assumed ? new Map([...options, ['reference-distance', assumedDistanceMetres]]) : options,
  );
  if (isTrouble(numbers)) return numbers;
  const { channels, ...conditions } = numbers;

  const takePath = given(options, 'take');
  const takeFile = await readInputFile(takePath, io);
  if (isTrouble(takeFile)) return takeFile;
  const schedule = parseSchedule(textOf(takeFile));
  if (isTrouble(schedule)) return inFile(takePath, schedule);

  const close = readClose(options, schedule);
  if (isTrouble(close)) return close;

  const capturePath = given(options, 'capture');
  const capture = await readCapture(capturePath, schedule, channels, io);
  if (isTrouble(capture)) return capture;
  const calibration = await readCalibration(options, io);
  if (isTrouble(calibration)) return calibration;

  const inForce = await readInForce(options, schedule, io);
  if (isTrouble(inForce)) return inForce;

  const readings = await readTake(schedule, capture, {
    ...conditions,
    calibration,
    inForce,
    close,
    simulated: false,
    signal: io.signal,
    onChannel: ({ channel: label }, progress) =>
      io.progress(`${label} read, ${Math.round(100 * progress)} % done`),
  });
  if (isTrouble(readings)) return inFile(capturePath, readings);
  const assumes = assumed && !readings.absolute;
  if (assumes) tellAssumption(readings, io);
  return {
    ...printedReadings(readings, options.has('curves')),
    referenceDistanceAssumed: assumes,
  };
}

interface ReadNumbers {
  readonly temperatureCelsius: number;
  readonly referenceDistanceMetres: number;
  readonly channels: CaptureChannels;
}

function readNumbers(options: GivenOptions): ReadNumbers | Trouble {
  const temperatureCelsius = numberOption(options, 'temperature', {
    low: -40,
    high: 60,
    unit: '°C',
  });
  if (isTrouble(temperatureCelsius)) return temperatureCelsius;
  const range = { low: 0.1, high: 30, unit: 'm' };
  const referenceDistanceMetres = numberOption(options, 'reference-distance', range);
  if (isTrouble(referenceDistanceMetres)) return referenceDistanceMetres;
  const microphone = channelOption(options, 'capture-channel');
  if (isTrouble(microphone)) return microphone;
  const loopback = channelOption(options, 'loopback-channel');
  if (isTrouble(loopback)) return loopback;
  return { temperatureCelsius, referenceDistanceMetres, channels: { microphone, loopback } };
}

function channelOption(options: GivenOptions, name: string): number | null | Trouble {
  return options.has(name) ? numberOption(options, name, { low: 1, high: 64, whole: true }) : null;
}

async function readCalibration(
  options: GivenOptions,
  io: CommandIo,
): Promise<MicrophoneCalibration | null | Trouble> {
  const path = options.get('calibration');
  if (path === undefined) return null;
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const calibration = parseCalibration(file.bytes, basename(path));
  return isTrouble(calibration) ? inFile(path, calibration) : calibration;
}

async function readInForce(
  options: GivenOptions,
  schedule: Schedule,
  io: CommandIo,
): Promise<SettingsInForce | Trouble> {
  const path = options.get('in-force');
  if (path === undefined) return { ...nothingInForce, filters: usualFilters };
  const file = await readInputFile(path, io);
  if (isTrouble(file)) return file;
  const layout = layoutFromName(schedule.layout);
  if (isTrouble(layout)) return layout;
  const inForce = parseInForce(textOf(file), layout);
  return isTrouble(inForce) ? inFile(path, inForce) : inForce;
}

function tellAssumption({ reference, referenceDistanceMetres }: Readings, io: CommandIo): void {
  const assumed = `${referenceDistanceMetres.toFixed(2)} m to ${reference} assumed`;
  io.tell(`No --reference-distance: ${assumed}. Differences of distance hold all the same.`);
}
