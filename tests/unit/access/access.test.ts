import { describe, expect, it, test } from "vitest";
import {
  homeAddresses,
  isFromOwnPage,
  isHomeAddress,
  isOwnHost,
  Passphrase,
  readSessionCookie,
  sessionCookie,
  waitSeconds,
} from "#lib/access/index.ts";

describe("addresses at home", () => {
  // First and last address of each block and their neighbours outside: RFC 1918 §3, RFC 1122 §3.2.1.3.
  test.each([
    ["10.0.0.0", true],
    ["10.255.255.255", true],
    ["9.255.255.255", false],
    ["11.0.0.0", false],
    ["172.16.0.0", true],
    ["172.31.255.255", true],
    ["172.15.255.255", false],
    ["172.32.0.0", false],
    ["192.168.0.0", true],
    ["192.168.255.255", true],
    ["192.167.255.255", false],
    ["192.169.0.0", false],
    ["127.0.0.1", true],
    ["::1", true],
    ["::ffff:192.168.1.7", true],
    ["::ffff:203.0.113.9", false],
    ["203.0.113.9", false],
    ["2001:db8::1", false],
    ["192.168.1", false],
    ["192.168.1.256", false],
    ["", false],
  ])("%s: %s", (address, isAtHome) => {
    expect(isHomeAddress(address)).toBe(isAtHome);
  });

  it("lists what other devices can reach: no loopback, no public address", () => {
    const listed = homeAddresses([
      { address: "127.0.0.1", family: "IPv4", internal: true },
      { address: "192.168.1.20", family: "IPv4", internal: false },
      { address: "203.0.113.9", family: "IPv4", internal: false },
      { address: "fe80::1", family: "IPv6", internal: false },
      { address: "10.0.0.4", family: "IPv4", internal: false },
    ]);
    expect(listed).toEqual(["10.0.0.4", "192.168.1.20"]);
  });
});

describe("own door", () => {
  test.each([
    ["192.168.1.20:4310", true],
    ["192.168.1.20", false],
    ["192.168.1.20:4311", false],
    ["elsewhere.example:4310", false],
    [undefined, false],
  ])("the host %s is ours: %s", (host, isOwn) => {
    expect(isOwnHost(host, "192.168.1.20", 4310)).toBe(isOwn);
  });

  test.each([
    ["GET", undefined, true],
    ["POST", undefined, false],
    ["POST", "http://192.168.1.20:4310", true],
    ["POST", "http://elsewhere.example", false],
    ["POST", "null", false],
    ["GET", "http://elsewhere.example", false],
  ])("%s from %s is let through: %s", (method, origin, isOwn) => {
    expect(isFromOwnPage({ method, origin, ownOrigin: "http://192.168.1.20:4310" })).toBe(isOwn);
  });
});

describe("attempts", () => {
  const now = new Date("2026-03-11T15:45:00Z");
  const ago = (seconds: number): Date => new Date(now.getTime() - seconds * 1000);

  test.each([
    [0, 0],
    [2, 0],
    [3, 2],
    [4, 4],
    [5, 8],
    [10, 256],
    [11, 300],
    [40, 300],
  ])("after %i failures just now one waits %i seconds", (failures, seconds) => {
    expect(
      waitSeconds(
        Array.from({ length: failures }, () => ago(0)),
        now,
      ),
    ).toBe(seconds);
  });

  it("counts the wait from the last failure and forgets old ones", () => {
    expect(waitSeconds([ago(20), ago(10), ago(1)], now)).toBe(1);
    expect(waitSeconds([ago(20), ago(10), ago(2)], now)).toBe(0);
    expect(
      waitSeconds(
        Array.from({ length: 9 }, () => ago(1801)),
        now,
      ),
    ).toBe(0);
  });
});

describe("session cookie", () => {
  const token = "a".repeat(43);

  it("is closed to scripts and to other sites", () => {
    const line = sessionCookie(token, true);
    for (const word of ["HttpOnly", "SameSite=Strict", "Secure", "Path=/"])
      expect(line).toContain(word);
    expect(sessionCookie(token, false)).not.toContain("Secure");
    expect(readSessionCookie(`other=1; ${line}`)).toBe(token);
  });

  test.each([
    "",
    "noonbook-session=",
    "noonbook-session=short",
    `noonbook-session=${"a".repeat(42)}!`,
    undefined,
  ])("%s carries no token", (header) => {
    expect(readSessionCookie(header)).toBeUndefined();
  });
});

test.each([
  ["short one", false],
  ["aaaaaaaaaaaaaaaaaaaaaaaa", false],
  ["four lamps over the quay", true],
  ["x".repeat(201), false],
])("the passphrase “%s” is taken: %s", (typed, isTaken) => {
  expect(Passphrase.safeParse(typed).success).toBe(isTaken);
});
