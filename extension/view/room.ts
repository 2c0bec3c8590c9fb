import type { Room } from '../src/diagram/paper.ts';

/** An edge that is dragged is let alone until it rests for so long, ms. */
const rest = 200;

/** What the bar above a drawing and the caution below it take, px. */
const bars = 36 + 38;

/** Tells how much room a drawing has, at once and after each change. */
export function followRoom(tell: (room: Room) => void): void {
    const room = (): Room => ({
        width: Math.max(1, window.innerWidth),
        height: Math.max(1, window.innerHeight - bars),
    });
    let timer: ReturnType<typeof setTimeout> | undefined;
    window.addEventListener('resize', () => {
        clearTimeout(timer);
        timer = setTimeout(() => tell(room()), rest);
    });
    tell(room());
}
