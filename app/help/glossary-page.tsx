import { GLOSSARY } from './glossary.ts';

export function GlossaryPage() {
  return (
    <dl className="glossary">
      {GLOSSARY.map(({ word, means, ground }) => (
        <div key={word}>
          <dt>{word}</dt>
          <dd>
            {means} <small>{ground}</small>
          </dd>
        </div>
      ))}
    </dl>
  );
}
