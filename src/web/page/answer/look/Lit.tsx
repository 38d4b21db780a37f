import { Typeset } from "../../said.tsx";

/** The word that differs takes the accent. */
export function Lit({ text, word }: { text: string; word: string }) {
  const at = text.lastIndexOf(word);
  if (at < 0) return <Typeset text={text} />;
  return (
    <>
      <Typeset text={text.slice(0, at)} />
      <b className="lit">
        <Typeset text={word} />
      </b>
      <Typeset text={text.slice(at + word.length)} />
    </>
  );
}
