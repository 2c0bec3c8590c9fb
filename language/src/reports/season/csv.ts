import type { Bite, Season } from '../../plan/season/bites.ts';
import { fromSI } from '../../units/quantity.ts';
import { printTime } from '../../units/time.ts';
import { type Unit, units } from '../../units/unit.ts';

export interface SeasonOptions {
    /** Places are a crew's own: they are told only to whoever asks for them by name. */
    readonly places?: boolean;
}

/** An event as a row of a table: SI or the units in the names, empty where nothing is known. */
export interface EventRow {
    readonly [column: string]: string | number | undefined;
}

export function eventRows({ bites }: Season, { places = false }: SeasonOptions = {}): EventRow[] {
    return bites.map((bite) => rowOf(bite, places));
}

function rowOf(
    { log, event, plan, lure, method, wave, speed, target, went }: Bite,
    places: boolean,
): EventRow {
    const inUnit = (value: number | undefined, unit: Unit) =>
        value === undefined ? undefined : Number(fromSI(value, unit).toPrecision(6));
    return {
        date: log.date.value,
        time: printTime(event.time.value),
        zone: log.zone && `UTC${log.zone.value === 'Z' ? '' : log.zone.value}`,
        plan: plan?.name,
        position: event.position?.value.name,
        lure,
        method,
        wave,
        target,
        outcome: event.outcome.map(({ value }) => value).join(', '),
        raised: Number(went.raised),
        bit: Number(went.bit),
        hooked: Number(went.hooked),
        boated: Number(went.boated),
        species: event.species?.value,
        weight_kg: inUnit(event.weight?.si, units.kg),
        angler: event.angler?.value,
        fought_min: inUnit(event.fought?.si, units.min),
        speed_kn: inUnit(speed, units.kn),
        sea_m: event.sea?.si,
        water_degC: inUnit(event.water?.si, units['°C']),
        colour: event.colour?.value,
        ...(places && { place: event.spot?.value }),
        note: event.note?.value,
    };
}

/** RFC 4180, a row an event. */
export function seasonCsv(season: Season, options: SeasonOptions = {}): string {
    const rows = eventRows(season, options);
    const columns = Object.keys(rows[0] ?? rowOfNothing(options));
    return [columns, ...rows.map((row) => columns.map((column) => row[column]))]
        .map((cells) => `${cells.map(cell).join(',')}\r\n`)
        .join('');
}

function rowOfNothing({ places }: SeasonOptions): EventRow {
    return { date: '', time: '', outcome: '', ...(places && { place: '' }) };
}

/** A text that a spreadsheet would compute is told to be a text. */
function cell(value: string | number | undefined): string {
    if (value === undefined) return '';
    if (typeof value === 'number') return String(value);
    const harmless = /^[=+\-@\t\r]/.test(value) ? `'${value}` : value;
    return /[",\r\n]/.test(harmless) ? `"${harmless.replaceAll('"', '""')}"` : harmless;
}
