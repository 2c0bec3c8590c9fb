import type { Room } from '../src/diagram/paper.ts';

/** An edge that is dragged is let alone until it rests for so long, ms. */
const rest = 200;

/** What the bar above a drawing and the caution below it take before either is there, px. */
const usual = { bar: 36, caution: 38 } as const;

/**
 * Tells how much room a drawing has, at once and after each change.
 *
 * @returns looks again, after something came to stand around the drawing or went
 */
export function followRoom(tell: (room: Room) => void): () => void {
    const height = (id: string) => document.getElementById(id)?.offsetHeight ?? 0;
    const room = (): Room => {
        const around = (height('bar') || usual.bar) + usual.caution + height('choices') + height('player');
        return { width: Math.max(1, window.innerWidth), height: Math.max(1, window.innerHeight - around) };
    };
    let timer: ReturnType<typeof setTimeout> | undefined;
    let last = room();
    const look = () => {
        const now = room();
        // A line of words more or less is not worth another sheet.
        if (now.width === last.width && Math.abs(now.height - last.height) < 24) return;
        last = now;
        tell(now);
    };
    window.addEventListener('resize', () => {
        clearTimeout(timer);
        timer = setTimeout(look, rest);
    });
    tell(last);
    return look;
}
