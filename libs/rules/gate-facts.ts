// What rules may read of a job at its gates: order, delivery, warranty and claim. Every key may be
// unknown; an empty list says that nothing is outstanding, which is not the same as not known.
// Dates are YYYY-MM-DD texts as they were recorded: a rule has no clock.

import type { Approval, WarrantyTitle } from './words.js';

export interface GateFacts {
  // order
  /** Surfaces with a stage not confirmed, or up for re-check, by name with the stage. */
  readonly surfaces_not_ready?: readonly string[] | undefined;
  /** Surfaces whose required sign-off is missing, declined, revoked or up for re-check. */
  readonly sign_offs_not_standing?: readonly string[] | undefined;
  readonly assumed_facts?: readonly string[] | undefined;
  /** Surfaces whose lengths nobody signed, neither as hold nor as field-verify. */
  readonly lengths_not_signed?: readonly string[] | undefined;
  readonly colors_open?: readonly string[] | undefined;
  /** Colors whose physical chip the customer has not accepted. */
  readonly chips_not_accepted?: readonly string[] | undefined;
  readonly proposal_accepted?: boolean | undefined;
  /** 0 where no deposit was agreed. */
  readonly deposit_agreed_usd?: number | undefined;
  readonly deposit_received_usd?: number | undefined;
  readonly quote_valid_until?: string | undefined;
  readonly order_date?: string | undefined;
  readonly permit?: Approval | undefined;
  readonly association_approval?: Approval | undefined;
  readonly truck_limit_ft?: number | undefined;
  readonly site_limit_ft?: number | undefined;
  readonly handling_limit_ft?: number | undefined;
  /** Visible planes with more than one finish system or supplier, and no signed acceptance. */
  readonly planes_of_mixed_finish?: readonly string[] | undefined;
  /** Findings of severity require that are still due. */
  readonly requirements_due?: readonly string[] | undefined;
  readonly cautions_not_acknowledged?: readonly string[] | undefined;
  readonly landing_place_named?: boolean | undefined;

  // warranty gates before the order
  readonly promised_documents?: readonly string[] | undefined;
  /** Promised documents whose supplier's text is not on file. */
  readonly promised_without_terms?: readonly string[] | undefined;
  /** Whether the warrantor approved application and details for weathertightness. */
  readonly weathertightness_approved?: boolean | undefined;
  readonly term_text_given?: boolean | undefined;
  /** Of slope, distance to water, kind of water and color term: those not filled in. */
  readonly warranty_particulars_missing?: readonly string[] | undefined;

  // delivery and installation
  readonly acknowledgment_differences?: readonly string[] | undefined;
  readonly receipt_differences?: readonly string[] | undefined;
  readonly damage_not_settled?: readonly string[] | undefined;
  readonly planes_without_lot?: readonly string[] | undefined;
  /** Visible planes with more than one coil or lot, and no signature of the owner. */
  readonly planes_of_mixed_lots?: readonly string[] | undefined;
  readonly stored_dry?: boolean | undefined;
  readonly tear_off_confirmed?: boolean | undefined;
  readonly covered_work_without_photos?: readonly string[] | undefined;
  readonly as_built_differences?: readonly string[] | undefined;

  // warranty documents
  readonly final_inspection_passed?: boolean | undefined;
  readonly punch_list_open?: readonly string[] | undefined;
  readonly registration_due_by?: string | undefined;
  readonly registered_on?: string | undefined;
  readonly documents_without_start?: readonly string[] | undefined;
  readonly documents_without_warrantor?: readonly string[] | undefined;
  /** Documents whose attached supplier's text is not the text on file, byte for byte. */
  readonly terms_altered?: readonly string[] | undefined;
  readonly warranty_title?: WarrantyTitle | undefined;
  /** The tests of 15 U.S.C. 2304 that the document does not meet. */
  readonly full_tests_not_met?: readonly string[] | undefined;
  readonly consumer_product?: boolean | undefined;
  /** The items of 16 CFR 701.3(a) that the document does not disclose. */
  readonly disclosures_missing?: readonly string[] | undefined;
  readonly paint_document_included?: boolean | undefined;
  /** Exclusions already triggered by recorded facts that the document does not name. */
  readonly exclusions_not_named?: readonly string[] | undefined;

  // claim
  /** Of surface, lot and kind of claim: those not named. */
  readonly claim_particulars_missing?: readonly string[] | undefined;
  readonly notice_date?: string | undefined;
  readonly term_from?: string | undefined;
  readonly term_to?: string | undefined;
  readonly is_color_claim?: boolean | undefined;
  /** The color scale that the term itself names; 'not named' where it names none. */
  readonly term_color_scale?: string | undefined;
  readonly chalk_rated_before_wash?: boolean | undefined;
  readonly color_read_after_wash?: boolean | undefined;
  readonly reading_details_missing?: readonly string[] | undefined;
  readonly transfers_without_notice?: readonly string[] | undefined;
  readonly exclusions_triggered?: readonly string[] | undefined;
  readonly claim_evidence_missing?: readonly string[] | undefined;
}
