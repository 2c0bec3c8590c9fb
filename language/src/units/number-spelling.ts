import { printNumber } from './print.ts';
import { fault, type QuantityError } from './quantity-error.ts';

/**
 * What is wrong with the number that a text opens with, judged by its spelling alone: `8,5`, `.5`, `5 1/2`.
 *
 * @param text  without its sign
 * @param sign  put before what is proposed instead
 * @param at    where `text` starts in the whole
 */
export function misspeltNumber(text: string, sign: string, at: number): QuantityError | undefined {
    return (
        decimalComma(text, sign, at) ??
        fraction(text, sign, at) ??
        barePoint(text, sign, at) ??
        missing(text, at)
    );
}

function decimalComma(text: string, sign: string, at: number): QuantityError | undefined {
    const [found, whole = '', part = '', more = ''] = /^(\d+),(\d+)((?:,\d+)*(?:\.\d+)?)/.exec(text) ?? [];
    if (found === undefined) return undefined;
    const rest = text.slice(found.length);
    const asPoint = `${sign}${whole}.${part}${rest}`;
    const asThousands = `${sign}${whole}${part}${more.replaceAll(',', '')}${rest}`;
    // Three digits after the comma are thousands more often than thousandths; only the author knows.
    const either = part.length === 3 ? [asThousands, asPoint] : [asPoint];
    const what = 'Decimals take a point, thousands nothing.';
    return fault('decimal-comma', found, at, what, more ? [asThousands] : either);
}

function fraction(text: string, sign: string, at: number): QuantityError | undefined {
    const [found, whole = '0', over, under] = /^(?:(\d+)\s+)?(\d+)\s*[/⁄]\s*(\d+)/.exec(text) ?? [];
    if (found === undefined) return undefined;
    const value = Number(whole) + Number(over) / Number(under);
    const instead = Number.isFinite(value)
        ? [`${sign}${printNumber(value, 4)}${text.slice(found.length)}`]
        : [];
    return fault('fraction', found, at, 'Fractions are written as decimals.', instead);
}

function barePoint(text: string, sign: string, at: number): QuantityError | undefined {
    const [found] = /^(?:\.\d+|\d+\.(?!\d))/.exec(text) ?? [];
    if (found === undefined) return undefined;
    const full = found.startsWith('.') ? `0${found}` : found.slice(0, -1);
    const instead = [`${sign}${full}${text.slice(found.length)}`];
    return fault('bare-point', found, at, 'A point stands between two digits.', instead);
}

function missing(text: string, at: number): QuantityError | undefined {
    return /^\d/.test(text) ? undefined : fault('no-number', text, at, 'A quantity opens with a number.');
}
