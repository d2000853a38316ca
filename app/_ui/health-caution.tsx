import Link from "next/link";

/** The usual caution of every page that bears on health, with whom to ask and what is not checked. */
export function HealthCaution({
  unset = [],
}: {
  readonly unset?: readonly { readonly sentence: string; readonly href: string }[];
}) {
  return (
    <aside className="caution" aria-label="Caution">
      <p>
        These checks inform and warn; they clear nothing. Read the label each time, follow the
        school and your local food office, and ask the child’s doctor or allergy clinic. For a
        reaction or choking, call the emergency number.{" "}
        <Link className="noprint" href="/bible/checks">
          What the checks assume
        </Link>
      </p>
      {unset.map(({ sentence, href }) => (
        <p key={href}>
          <strong>{sentence}</strong> Enter it in the <Link href={href}>Series bible</Link>.
        </p>
      ))}
    </aside>
  );
}
