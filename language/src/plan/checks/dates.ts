import type { AstNode } from 'langium';
import { parseDate } from '../../units/date.ts';
import { parseTime } from '../../units/time.ts';
import type { Finding } from '../finding.ts';
import { placeOfProperty } from '../place.ts';
import { instead, problem } from './problem.ts';

/** Days and times that no calendar or clock has. */
export function checkDates(node: AstNode): Finding[] {
    const { date, until, time } = node as { date?: string; until?: string; time?: string };
    return [
        ...judged(node, 'date', date, parseDate),
        ...judged(node, 'until', until, parseDate),
        ...judged(node, 'time', time, parseTime),
    ];
}

function judged(
    node: AstNode,
    property: string,
    written: string | undefined,
    parse: (text: string) => unknown,
): Finding[] {
    if (typeof written !== 'string') return [];
    const result = parse(written);
    if (typeof result !== 'object') return [];
    const { message, instead: texts = [] } = result as { message: string; instead?: readonly string[] };
    const at = placeOfProperty(node, property);
    return [problem('value', at, { what: message, fixes: texts.map((text) => instead(at, text)) })];
}
