/** A browser that was let in stays so for this long. */
export const SESSION_DAYS = 30;
const NAME = "noonbook-session";
/** 32 random bytes in base64url. */
const TOKEN = /^[\w-]{43}$/;

/** The `Set-Cookie` line of a session; `isEncrypted` when the page came over HTTPS. */
export function sessionCookie(token: string, isEncrypted: boolean): string {
  return line(token, SESSION_DAYS * 86_400, isEncrypted);
}

/** The `Set-Cookie` line that makes the browser forget its session. */
export function forgetSessionCookie(isEncrypted: boolean): string {
  return line("", 0, isEncrypted);
}

/** The session's token in a `Cookie` header, or undefined. */
export function readSessionCookie(header: string | undefined): string | undefined {
  for (const pair of (header ?? "").split(";")) {
    const [name, value] = pair.trim().split("=", 2);
    if (name === NAME && value !== undefined && TOKEN.test(value)) return value;
  }
  return undefined;
}

function line(value: string, seconds: number, isEncrypted: boolean): string {
  const rest = `Path=/; Max-Age=${seconds}; HttpOnly; SameSite=Strict`;
  return `${NAME}=${value}; ${rest}${isEncrypted ? "; Secure" : ""}`;
}
