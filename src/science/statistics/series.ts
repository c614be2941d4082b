import { accept, type Refusal, type Result, refuse } from '../../units';

const refusal = (code: string, path: string, expected: string, received: string, sentence: string): Refusal => ({ code, path, expected, received, sentence });

/** Refuses fewer readings than a method needs, and a figure that is none. */
export const enough = (values: readonly number[], least: number, path: string): Result<undefined> => {
  const bad = values.findIndex((v) => !Number.isFinite(v));
  if (bad >= 0) return refuse(refusal('not-a-number', `${path}[${bad}]`, 'a number', String(values[bad]), `Reading ${bad + 1} is not a number.`));
  const n = values.length;
  if (n >= least) return accept(undefined);
  const missing = least - n;
  return refuse(
    refusal(
      'too-few-readings',
      path,
      `${least} readings or more`,
      `${n} ${n === 1 ? 'reading' : 'readings'}`,
      `This needs ${least} readings or more; ${missing} more ${missing === 1 ? 'is' : 'are'} needed.`,
    ),
  );
};

/** Readings closer in time than this are of one time: a minute. [d] */
export const ONE_TIME = 1 / 1440;

/** Refuses readings that do not pair with times, and times that are all the same. */
export const paired = (times: readonly number[], values: readonly number[], least: number): Result<undefined> => {
  if (times.length !== values.length)
    return refuse(
      refusal(
        'lengths-differ',
        'readings',
        `${times.length} readings, one for each time`,
        `${values.length} readings`,
        `There are ${times.length} times and ${values.length} readings; each reading needs its time.`,
      ),
    );
  for (const checked of [enough(times, least, 'times'), enough(values, least, 'readings')]) if (!checked.ok) return checked;
  if (Math.max(...times) - Math.min(...times) < ONE_TIME)
    return refuse(refusal('times-all-equal', 'times', 'readings from at least two times', `all at ${times[0]}`, 'All readings are from the same time; a change cannot be told.'));
  return accept(undefined);
};
