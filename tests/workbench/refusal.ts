/** The names under which VS Code knows what can go wrong in a file system. */
export type FileSystemFault =
    | 'FileNotFound'
    | 'FileExists'
    | 'FileNotADirectory'
    | 'FileIsADirectory'
    | 'NoPermissions'
    | 'Unavailable';

/** An answer other than success: a status for HTTP, a fault for the editor, a sentence for a person. */
export class Refusal extends Error {
    readonly status: number;
    readonly fault: FileSystemFault;

    constructor(status: number, fault: FileSystemFault, sentence: string) {
        super(sentence);
        this.status = status;
        this.fault = fault;
    }
}

/** What an error thrown on the way to an answer amounts to. */
export function refusalOf(error: unknown): Refusal {
    if (error instanceof Refusal) return error;
    const { code = '', message } = error as NodeJS.ErrnoException;
    const [status, fault] = faults[code] ?? ([500, 'Unavailable'] as const);
    return new Refusal(status, fault, message);
}

const faults: Readonly<Record<string, readonly [status: number, fault: FileSystemFault]>> = {
    ENOENT: [404, 'FileNotFound'],
    ENOTDIR: [409, 'FileNotADirectory'],
    EISDIR: [409, 'FileIsADirectory'],
    EEXIST: [409, 'FileExists'],
    ENOTEMPTY: [409, 'FileExists'],
    EACCES: [403, 'NoPermissions'],
    EPERM: [403, 'NoPermissions'],
    ELOOP: [403, 'NoPermissions'],
};
