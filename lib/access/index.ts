/** Access: who may reach the program from another device at home. */
export { homeAddresses, isHomeAddress, type NetworkAddress } from "./home-network.ts";
export { Passphrase } from "./passphrase.ts";
export { ATTEMPTS_FORGOTTEN_AFTER_MINUTES, waitSeconds } from "./slow-down.ts";
export {
  forgetSessionCookie,
  readSessionCookie,
  SESSION_DAYS,
  sessionCookie,
} from "./session-cookie.ts";
export { isFromOwnPage, isOwnHost } from "./own-door.ts";
export { doorFor, wayBack } from "./way-back.ts";
