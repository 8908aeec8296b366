import { useState } from 'preact/hooks';
import { type CountryProfile, keptRules, type Problem, profileOfSite } from '../../../core/index.ts';
import { ProblemLine } from '../../look/ProblemLine.tsx';
import { useApp } from '../../model/app.ts';

/** Keeps a profile as the site’s own, so that nobody has to choose it the next time; offered where it is another one. */
export function SiteProfile({ profile }: { readonly profile: CountryProfile }) {
  const { site, clock } = useApp();
  const [failed, setFailed] = useState<Problem | null>(null);
  const { rules } = site.facility.value.site;
  async function keep(): Promise<void> {
    const payload = { ...keptRules(rules), countryProfile: profile.id };
    const written = await site.write([{ kind: 'site-rules-set', subjects: [], payload, day: clock.today.value }]);
    setFailed(written.ok ? null : written.problem);
  }
  if (failed !== null) return <ProblemLine problem={failed} />;
  if (profileOfSite(rules.countryProfile).id === profile.id) return null;
  return (
    <button type="button" class="link pack-keep" onClick={() => void keep()}>
      Keep this profile for the site
    </button>
  );
}
