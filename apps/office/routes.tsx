// Every address of the pages. Each page's code is loaded when it is first opened.

import type { QueryClient } from '@tanstack/react-query';
import {
  createRootRouteWithContext,
  createRoute,
  createRouter,
  lazyRouteComponent,
  Outlet,
} from '@tanstack/react-router';
import { jobsQuery } from './api/queries.js';
import { queryOf, type Filter } from './jobs/query.js';
import { FailedPage, Loading } from './parts/states.js';
import { Home, Inside, NotFound } from './shell/inside.js';

type Search = Record<string, string | undefined>;

/** Keeps only texts: the address is a filter, never a program. */
const texts = (search: Record<string, unknown>): Search =>
  Object.fromEntries(
    Object.entries(search)
      .filter(([, value]) => ['string', 'number', 'boolean'].includes(typeof value) && value !== '')
      .map(([name, value]) => [name, String(value)]),
  );

const root = createRootRouteWithContext<{ readonly client: QueryClient }>()({
  component: Outlet,
  notFoundComponent: NotFound,
});
const inside = createRoute({ getParentRoute: () => root, id: 'inside', component: Inside });

type Load = Parameters<typeof lazyRouteComponent>[0];
const outer = <const P extends string>(path: P, load: Load, name: string) =>
  createRoute({
    getParentRoute: () => root,
    path,
    validateSearch: texts,
    component: lazyRouteComponent(load, name as never),
  });
const page = <const P extends string>(path: P, load: Load, name: string) =>
  createRoute({
    getParentRoute: () => inside,
    path,
    validateSearch: texts,
    component: lazyRouteComponent(load, name as never),
  });

/** Its jobs are asked for when one sets out for it, not when its code has come. */
const jobList = createRoute({
  getParentRoute: () => inside,
  path: '/jobs',
  validateSearch: texts,
  beforeLoad: ({ context, search }) => {
    void context.client.prefetchQuery(jobsQuery(queryOf(search as Filter)));
  },
  component: lazyRouteComponent(() => import('./jobs/job-list.js'), 'JobListPage'),
});

const signIn = () => import('./session/sign-in.js');
const openJob = () => import('./jobs/open-job.js');
const job = () => import('./jobs/job-page.js');
const surface = () => import('./stages/surface-page.js');
const record = () => import('./record/record-page.js');
const rulebook = () => import('./rulebook/rulebook-page.js');
const rulesDraftForm = () => import('./rulebook/draft-form-page.js');
const catalogue = () => import('./catalogue/catalogue-page.js');
const phone = () => import('./phone/phone-page.js');

const tree = root.addChildren([
  outer('/sign-in', signIn, 'SignInPage'),
  outer('/sign-in/$token', signIn, 'LinkPage'),
  outer('/packet/$token', () => import('./sign-off/visit-page.js'), 'VisitPage'),
  outer('/customer/$token', () => import('./session/customer-page.js'), 'CustomerPage'),
  outer('/setup/$token', () => import('./session/setup.js'), 'SetupPage'),
  inside.addChildren([
    createRoute({
      getParentRoute: () => inside,
      path: '/',
      component: Home,
    }),
    jobList,
    page('/jobs/new', openJob, 'OpenJobPage'),
    page('/jobs/import', () => import('./jobs/import-page.js'), 'ImportPage'),
    page('/jobs/$job', job, 'JobPage'),
    page('/jobs/$job/change', () => import('./jobs/change-job.js'), 'ChangeJobPage'),
    page('/jobs/$job/order', () => import('./after/order-page.js'), 'OrderPage'),
    page('/jobs/$job/after/$command', () => import('./after/command-page.js'), 'AfterCommandPage'),
    page(
      '/jobs/$job/take-off/$surface',
      () => import('./take-off/take-off-page.js'),
      'TakeOffPage',
    ),
    page('/jobs/$job/facts', () => import('./facts/facts-page.js'), 'FactsPage'),
    page('/jobs/$job/surfaces/$surface/$stage', surface, 'SurfacePage'),
    page('/jobs/$job/history', () => import('./record/history-page.js'), 'HistoryPage'),
    page('/jobs/$job/record', record, 'RecordPage'),
    page('/jobs/$job/proof', () => import('./record/proof-page.js'), 'ProofPage'),
    page('/jobs/$job/claims/$claim', () => import('./claims/claim-page.js'), 'ClaimPage'),
    page('/jobs/$job/compare', () => import('./record/compare-page.js'), 'ComparePage'),
    page('/jobs/$job/requests/$request', () => import('./sign-off/answer-page.js'), 'AnswerPage'),
    page('/sign-offs', () => import('./sign-off/queue-page.js'), 'QueuePage'),
    page('/spanning', () => import('./sign-off/spanning-page.js'), 'SpanningPage'),
    page('/report', () => import('./report/report-page.js'), 'ReportPage'),
    page('/reminders', () => import('./after/reminders-page.js'), 'RemindersPage'),
    page('/decisions', () => import('./record/decisions-page.js'), 'DecisionsPage'),
    page('/rules', rulebook, 'RulebookPage'),
    page('/rules/$edition', rulebook, 'RulebookEditionPage'),
    page('/rules/drafts/new', rulesDraftForm, 'NewDraftPage'),
    page('/rules/drafts/$draft', () => import('./rulebook/draft-page.js'), 'DraftPage'),
    page('/rules/drafts/$draft/change', rulesDraftForm, 'ChangeDraftPage'),
    page('/rules/drafts/$draft/impact', () => import('./rulebook/impact-page.js'), 'ImpactPage'),
    page('/rules/drafts/$draft/publish', () => import('./rulebook/publish-page.js'), 'PublishPage'),
    page('/catalogue', catalogue, 'CataloguePage'),
    page('/catalogue/import', () => import('./catalogue/import-page.js'), 'CatalogueImportPage'),
    page('/catalogue/$edition', catalogue, 'CatalogueEditionPage'),
    page(
      '/catalogue/$edition/$profile',
      () => import('./catalogue/profile-page.js'),
      'ProfilePage',
    ),
    page('/admin', () => import('./admin/people-page.js'), 'PeoplePage'),
    page('/admin/company', () => import('./admin/company-page.js'), 'CompanyPage'),
    page('/admin/keys', () => import('./admin/keys-page.js'), 'KeysPage'),
    page('/admin/backups', () => import('./admin/backups-page.js'), 'BackupsPage'),
    page('/admin/health', () => import('./admin/health-page.js'), 'HealthPage'),
    page('/admin/readings', () => import('./admin/readings-page.js'), 'ReadingsPage'),
    page('/admin/disposal', () => import('./admin/disposal-page.js'), 'DisposalPage'),
    page('/admin/feed', () => import('./admin/feed-page.js'), 'FeedPage'),
    page('/password', () => import('./session/password-page.js'), 'PasswordPage'),
    page('/help', () => import('./shell/help-page.js'), 'HelpPage'),
    page('/phone', phone, 'PhoneListPage'),
    page('/phone/$job/$surface', phone, 'PhonePage'),
  ]),
]);

export const makeRouter = (client: QueryClient) =>
  createRouter({
    routeTree: tree,
    context: { client },
    scrollRestoration: true,
    defaultPendingComponent: () => <Loading what="the page" />,
    defaultErrorComponent: ({ error, reset }) => <FailedPage error={error} retry={reset} />,
    defaultPendingMs: 200,
    stringifySearch: (search) => {
      const text = new URLSearchParams(texts(search) as Record<string, string>).toString();
      return text && `?${text}`;
    },
    parseSearch: (text) => Object.fromEntries(new URLSearchParams(text)),
  });

declare module '@tanstack/react-router' {
  interface Register {
    router: ReturnType<typeof makeRouter>;
  }
}
