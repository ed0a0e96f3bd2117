// All parts of the service.

import { Module, type DynamicModule } from '@nestjs/common';
import { APP_FILTER, APP_GUARD, APP_PIPE } from '@nestjs/core';
import { CqrsModule } from '@nestjs/cqrs';
import { BackupsController } from './administration/backups.controller.js';
import { CompanyController } from './administration/company.controller.js';
import { KeysController } from './administration/keys.controller.js';
import { Acknowledgments } from './customers/acknowledgments.js';
import { CustomerLinksController } from './customers/customer-links.controller.js';
import { CalculatorsController } from './calculators/calculators.controller.js';
import { CatalogueImportController } from './catalogue/catalogue-import.controller.js';
import { CatalogueController } from './catalogue/catalogue.controller.js';
import { Companies } from './data/companies.js';
import { FrontDoor } from './data/front-door.js';
import { Ledgers } from './data/ledgers.js';
import { Mailer } from './data/mailer.js';
import { Settings } from './data/settings.js';
import { Signing } from './data/signing.js';
import { DisposalsController } from './disposal/disposals.controller.js';
import { Disposals } from './disposal/disposals.js';
import { KeepsFromErasure } from './disposal/keeps-from-erasure.js';
import { FilesController } from './files/files.controller.js';
import { Checked } from './http/checked.js';
import { Log } from './http/log.js';
import { OpenApiDocument } from './http/openapi.js';
import { ProblemFilter } from './http/problem-filter.js';
import { SessionGuard } from './http/session-guard.js';
import { ImportController } from './import/import.controller.js';
import { ImportJobs } from './import/import-jobs.js';
import { Changes } from './jobs/changes.js';
import { Contexts } from './jobs/contexts.js';
import { DecisionRecordController } from './jobs/decision-record.controller.js';
import { ExecuteOnJobHandler } from './jobs/execute-on-job.js';
import { FindJobsHandler } from './jobs/find-jobs.js';
import { JobTotals } from './jobs/job-totals.js';
import { Jobs } from './jobs/fold.js';
import { JobListExportController } from './jobs/job-list-export.controller.js';
import { JobNumbers } from './jobs/job-numbers.js';
import { JobsController } from './jobs/jobs.controller.js';
import {
  JobAtHandler,
  JobHistoryHandler,
  JobRecordHandler,
  RehearseOnJobHandler,
} from './jobs/read-job.js';
import { References } from './jobs/references.js';
import { DamageMail } from './log/damage-mail.js';
import { EvidenceController } from './log/evidence.controller.js';
import { Evidence } from './log/evidence.js';
import { Feed } from './log/feed.js';
import { FeedController } from './log/feed.controller.js';
import { FeedTokens } from './log/feed-tokens.js';
import { HealthController } from './log/health.controller.js';
import { LogDoor } from './log/log-door.js';
import { ProofController } from './log/proof.controller.js';
import { Readings } from './log/readings.js';
import { ReadingsController } from './log/readings.controller.js';
import { TimeStamps } from './log/time-stamps.js';
import { VerificationRuns } from './log/verification-runs.js';
import { VerificationsController } from './log/verifications.controller.js';
import { VerifyLogs } from './log/verify-logs.js';
import { PaperNames } from './papers/paper-names.js';
import { Papers } from './papers/papers.js';
import { PapersController } from './papers/papers.controller.js';
import { Attempts } from './people/attempts.js';
import { Names } from './people/names.js';
import { Parties } from './people/parties.js';
import { PartiesController } from './people/parties.controller.js';
import { PeopleController } from './people/people.controller.js';
import { SessionController } from './people/session.controller.js';
import { Sessions } from './people/sessions.js';
import { SetUp } from './people/set-up.js';
import { SignInLinks } from './people/sign-in-links.js';
import { MailedReminders } from './reminders/mailed-reminders.js';
import { ReminderMail } from './reminders/reminder-mail.js';
import { Reminders } from './reminders/reminders.js';
import { RemindersController } from './reminders/reminders.controller.js';
import { OwnerReportController } from './owner-report/owner-report.controller.js';
import { DraftsController } from './rulebook/drafts.controller.js';
import { Editions } from './rulebook/editions.js';
import { Previews } from './rulebook/previews.js';
import { PreviewsController } from './rulebook/previews.controller.js';
import { PublishRules } from './rulebook/publish-rules.js';
import { RulebookController } from './rulebook/rulebook.controller.js';
import { Rulebooks } from './rulebook/rulebooks.js';
import { UnderTodayController } from './rulebook/under-today.controller.js';
import { Factors } from './sign-off/factors.js';
import { FactorsController } from './sign-off/factors.controller.js';
import { Licenses } from './sign-off/licenses.js';
import { LicensesController } from './sign-off/licenses.controller.js';
import { PacketVisits } from './sign-off/packet-visits.js';
import { PacketVisitsController } from './sign-off/packet-visits.controller.js';
import { Packets } from './sign-off/packets.js';
import { SignOffsController } from './sign-off/sign-offs.controller.js';
import { Trail } from './sign-off/trail.js';
import { Solver } from './take-off/solver.js';
import { TakeOffController } from './take-off/take-off.controller.js';

const CONTROLLERS = [
  SessionController,
  PeopleController,
  PartiesController,
  FilesController,
  // The exports stand before "jobs/:id", which would take them for ids.
  JobListExportController,
  ImportController,
  JobsController,
  DecisionRecordController,
  TakeOffController,
  SignOffsController,
  PacketVisitsController,
  LicensesController,
  FactorsController,
  PapersController,
  CustomerLinksController,
  RemindersController,
  OwnerReportController,
  RulebookController,
  DraftsController,
  PreviewsController,
  UnderTodayController,
  CatalogueController,
  CatalogueImportController,
  CalculatorsController,
  HealthController,
  VerificationsController,
  FeedController,
  ReadingsController,
  EvidenceController,
  ProofController,
  CompanyController,
  KeysController,
  BackupsController,
  DisposalsController,
];
const HANDLERS = [
  ExecuteOnJobHandler,
  FindJobsHandler,
  JobTotals,
  JobAtHandler,
  JobHistoryHandler,
  JobRecordHandler,
  RehearseOnJobHandler,
];
const PARTS = [
  Companies,
  FrontDoor,
  Ledgers,
  Jobs,
  Changes,
  Contexts,
  Solver,
  References,
  JobNumbers,
  Editions,
  PublishRules,
  Previews,
  Rulebooks,
  Packets,
  Attempts,
  Names,
  Parties,
  Disposals,
  KeepsFromErasure,
  Sessions,
  SetUp,
  SignInLinks,
  OpenApiDocument,
  Acknowledgments,
  ImportJobs,
  Factors,
  Licenses,
  MailedReminders,
  Mailer,
  PacketVisits,
  PaperNames,
  Papers,
  ReminderMail,
  Reminders,
  Signing,
  DamageMail,
  Evidence,
  Feed,
  FeedTokens,
  LogDoor,
  Readings,
  TimeStamps,
  VerificationRuns,
  VerifyLogs,
  Trail,
];

@Module({})
export class AppModule {
  static with(settings: Settings, log: Log): DynamicModule {
    return {
      module: AppModule,
      imports: [CqrsModule.forRoot()],
      controllers: CONTROLLERS,
      providers: [
        { provide: Settings, useValue: settings },
        { provide: Log, useValue: log },
        { provide: APP_GUARD, useClass: SessionGuard },
        { provide: APP_PIPE, useClass: Checked },
        { provide: APP_FILTER, useClass: ProblemFilter },
        ...PARTS,
        ...HANDLERS,
      ],
    };
  }
}
