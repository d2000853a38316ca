/** One address of a network interface, as Node lists it. */
export type NetworkAddress = {
  readonly address: string;
  readonly family: string;
  readonly internal: boolean;
};

/** The private blocks of RFC 1918 §3, the loopback block of RFC 1122 §3.2.1.3 and link-local of RFC 3927. */
const HOME_BLOCKS: readonly (readonly [network: string, bits: number])[] = [
  ["10.0.0.0", 8],
  ["172.16.0.0", 12],
  ["192.168.0.0", 16],
  ["127.0.0.0", 8],
  ["169.254.0.0", 16],
];

/** Whether an IPv4 address (also written inside an IPv6 one) belongs to a network at home. */
export function isHomeAddress(address: string): boolean {
  const number = asNumber(address.replace(/^::ffff:/i, ""));
  if (number === undefined) return address === "::1";
  return HOME_BLOCKS.some(([network, bits]) => {
    const size = 2 ** (32 - bits);
    return Math.floor(number / size) === Math.floor((asNumber(network) ?? 0) / size);
  });
}

/** The addresses under which other devices at home can reach this one, in a stable order. */
export function homeAddresses(interfaces: readonly NetworkAddress[]): readonly string[] {
  return interfaces
    .filter(
      ({ family, internal, address }) => family === "IPv4" && !internal && isHomeAddress(address),
    )
    .map(({ address }) => address)
    .toSorted();
}

function asNumber(address: string): number | undefined {
  const parts = address.split(".");
  if (parts.length !== 4 || parts.some((part) => !/^\d{1,3}$/.test(part) || Number(part) > 255)) {
    return undefined;
  }
  return parts.reduce((total, part) => total * 256 + Number(part), 0);
}
