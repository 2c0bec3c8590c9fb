import { habitFromCrests } from '../../physics/waves/measured-crests.ts';
import { USUAL_HABIT, type WaveHabit, waveTrain } from '../../physics/waves/train.ts';
import { type Doubt, doubts } from '../../physics/waves/trust.ts';
import { usualWash, type Wash } from '../../physics/waves/wash.ts';
import { boatWaveHeight } from '../../physics/waves/wave-height.ts';
import { print } from '../../units/print.ts';
import type { Quantity } from '../../units/quantity.ts';
import { units } from '../../units/unit.ts';
import type { Figure, WaveFigures } from '../figures.ts';
import type { Boat, Spread } from '../model.ts';
import { known, silent, without, withoutSpeed } from './figure.ts';

/** The waves astern, and the habit of the boat's that they come from at any speed. */
export interface Water {
    readonly waves: Figure<WaveFigures>;
    readonly habit: WaveHabit;
    /** m; Infinity for deep water. */
    readonly depth: number;
}

export function waterAstern(plan: Spread): Water {
    const boat = plan.boat?.value;
    const depth = plan.depth?.si ?? Number.POSITIVE_INFINITY;
    const measured = measuredHabit(boat);
    const habit = measured?.habit ?? USUAL_HABIT;
    const speed = plan.speed?.si;
    if (speed === undefined) return { waves: withoutSpeed(plan), habit, depth };
    if (!(speed > 0)) return { waves: silent('The boat is not under way.'), habit, depth };
    const train = waveTrain(speed, habit, depth);
    if (!train) {
        const reason = 'The water is so shallow that no wave keeps pace with the boat.';
        return { waves: silent(reason), habit, depth };
    }
    const against = doubtOf(plan);
    const doubt = against
        ? sentenceOf(against, boat?.wavesUpTo !== undefined, plan.sea?.quantity)
        : measured?.doubt;
    const estimated = against?.reason === 'rough' && !boat?.wavesUpTo;
    const leaning = measured
        ? []
        : ['The first crest at half a wavelength (common practice); measured crests are better.'];
    const figures: WaveFigures = {
        speed,
        wavelength: train.length,
        firstCrest: train.firstCrest,
        firstCrestMeasured: measured !== undefined,
        ...(doubt && { doubt }),
        ...(estimated && { shownUpTo: against.limit }),
        height: ownHeight(boat, speed, train.length),
    };
    return { waves: known(figures, 'computed', leaning), habit, depth };
}

export function washOf(boat: Boat | undefined): Figure<Wash> | undefined {
    if (!boat) return undefined;
    const { wash, beam } = boat;
    const usual = beam && usualWash(beam.si);
    const near = wash?.near?.si ?? usual?.halfWidth;
    const far = wash?.far?.si ?? usual?.endHalfWidth;
    const length = wash?.length?.si ?? usual?.length ?? usualWash(0).length;
    if (near === undefined || far === undefined)
        return without(boat, 'beam', 'The boat has no `beam`, so its wash is not known.');
    const told = wash?.near && wash.far && wash.length;
    const leaning = told ? [] : ['The propeller wash at 0.30 to 0.15 of the beam, 10 m long (estimate).'];
    return known({ halfWidth: near, endHalfWidth: far, length }, 'measured', leaning);
}

function measuredHabit(boat: Boat | undefined): { habit: WaveHabit; doubt?: string } | undefined {
    if (!boat?.crests) return undefined;
    const { distances, speed } = boat.crests;
    const crests = distances.map((each, index) => ({ number: index + 1, astern: each.si }));
    const fitted = habitFromCrests(crests, speed.si);
    if (!fitted) return undefined;
    if (!fitted.doubtful) return { habit: fitted.habit };
    const share = `${Math.round(Math.abs(fitted.offTheory) * 100)} %`;
    const way = fitted.offTheory > 0 ? 'wider' : 'closer';
    return {
        habit: fitted.habit,
        doubt: `The measured crests stand ${share} ${way} than waves can at that speed: was it the speed over ground?`,
    };
}

function ownHeight(boat: Boat | undefined, speed: number, wavelength: number): Figure {
    const { waterline, beam } = boat ?? {};
    if (!waterline || !beam) return silent('The boat has no `waterline` or no `beam`.');
    const height = boatWaveHeight({ waterline: waterline.si, beam: beam.si }, speed, 2 * wavelength);
    if (height === undefined) return silent('The height of the boat’s waves cannot be told.');
    return known(height, 'estimated', [
        'The height of the boat’s own waves, from its length and beam (rough estimate).',
    ]);
}

/** The first thing that speaks against the wave train as a whole. */
function doubtOf(plan: Spread): Doubt | undefined {
    const boat = plan.boat?.value;
    const conditions = {
        speed: plan.speed!.si,
        ...(plan.depth && { depth: plan.depth.si }),
        ...(plan.sea && { sea: plan.sea.si }),
    };
    const hull = {
        ...(boat?.waterline && { waterline: boat.waterline.si }),
        ...(boat?.beam && { beam: boat.beam.si }),
    };
    // What the crew sees goes before an estimate of what they might.
    const limit = boat?.wavesUpTo?.si;
    const [doubt] = doubts(conditions, hull).filter(
        ({ reason }) => reason !== 'rough' || limit === undefined,
    );
    if (doubt) return doubt;
    if (limit === undefined || !plan.sea || plan.sea.si <= limit) return undefined;
    return { reason: 'rough', sea: plan.sea.si, limit };
}

/**
 * @param said  the crew says up to which sea its waves show; else that is an estimate
 * @param like  the sea as it was written, whose unit is spoken
 */
export function sentenceOf(doubt: Doubt, said = false, like?: Quantity): string {
    const height = (metres: number) => print(metres, like ?? units.m);
    switch (doubt.reason) {
        case 'planing':
            return `At this speed the boat begins to plane (Froude number ${doubt.froude.toFixed(2)}, limit ${doubt.limit}), and its waves no longer follow the model.`;
        case 'shallow':
            return `No wave keeps pace at ${print(doubt.speed, units.kn)}: the water is so shallow that waves go no faster than ${print(doubt.critical, units.kn)}.`;
        case 'rough':
            return `A sea of ${height(doubt.sea)} hides the boat’s own waves, which show up to ${said ? `${height(doubt.limit)}, as the boat says.` : `about ${height(doubt.limit)}; a boat may say better (\`waves up to ${height(doubt.sea)}\`).`}`;
        case 'outside wedge':
            return `The lure runs ${print(doubt.lateral, units.m)} out, beyond the boat’s wake, which is ${print(doubt.limit, units.m)} wide to each side there.`;
    }
}
