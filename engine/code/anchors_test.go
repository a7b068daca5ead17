package code

import "testing"

// Values checked against the published source named beside each.
func TestPublishedValues(t *testing.T) {
	tests := []struct {
		code   Code
		season Season
		param  Param
		want   string
		rule   string
		source string
	}{
		{International, 2025, "serve.clock-seconds", "8", "12.4.4", "FIVB Official Volleyball Rules 2025-2028, 12.4.4"},
		{International, 2025, "hits.second-double", "fault", "9.2.3; 9.3.4", "FIVB Official Volleyball Rules 2025-2028, 9.2.3"},
		{International, 2025, "align.serving-team", "free", "7.4", "FIVB Official Volleyball Rules 2025-2028, 7.4"},
		{International, 2025, "ball.pursuit", "first-hit-only", "10.1.2-10.1.2.3", "FIVB Official Volleyball Rules 2025-2028, 10.1.2"},
		{International, 2025, "subs.per-set", "6", "15.1; 15.6-15.7", "FIVB Official Volleyball Rules 2025-2028, 15.6"},
		{International, 2025, "hits.teammates-simultaneous", "two", "9.1.2.1", "FIVB Official Volleyball Rules 2025-2028, 9.1.2.1"},
		{Club, 2022, "overhead.min-height", "4.6", "8.4.2", "USA Volleyball Domestic Competition Regulations c. 2013-15, 8.4.2"},
		{Club, 2023, "centre.foot", "legal-unless-interferes", "11.2.2", "Referee magazine, Sept 2023, 'Over the line'"},
		{Collegiate, 2023, "hits.second-double", "fault", "14.2.3.2", "NCAA oversight-panel approvals for 2024, Feb 2024"},
		{Collegiate, 2024, "hits.second-double", "allowed-if-teammate-next", "14.2.3.2", "NCAA oversight-panel approvals for 2024, Feb 2024"},
		{Collegiate, 2023, "libero.count", "1", "12.1.1", "NCAA oversight-panel approvals for 2024, 12.1.1"},
		{Collegiate, 2024, "libero.count", "2", "12.1.1", "NCAA oversight-panel approvals for 2024, 12.1.1"},
		{Collegiate, 2025, "subs.per-set", "15", "11.3", "NCAA News archive, Feb 2005"},
		{Collegiate, 2025, "joust.after-three-hits", "fourth-contact", "14.3.2.1", "NCAA Women's Volleyball Rules 2012-13, 14.3.2.1"},
		{Scholastic, 2024, "hits.second-double", "fault", "9-4-8c", "State association news on the 2025-26 changes"},
		{Scholastic, 2025, "hits.second-double", "allowed-if-teammate-next", "9-4-8c", "State association news on the 2025-26 changes"},
		{Scholastic, 2025, "net.contact-rule", "always", "9-6-7", "Referee magazine, 'Nothing But Net', early 2020s"},
		{Scholastic, 2025, "centre.other-body", "fault-always", "9-5-7", "Referee magazine, Sept 2023, 'Over the line'"},
		{Scholastic, 2025, "subs.per-set", "18", "10-3-2", "US high-school exam with answers, 2024-25"},
		{Scholastic, 2025, "timeouts.length", "60", "11-2", "Referee magazine, 'Five rule differences', early 2020s"},
		{Scholastic, 2026, "serve.hands-above-head", "forbidden", "6-5-1", "Comments on the Rules 2026-27"},
		{Scholastic, 2026, "align.bench-player-on-court", "illegal-alignment", "6-4; 12-2-8b", "Comments on the Rules 2026-27"},
	}
	for _, tt := range tests {
		cell := open(t, tt.code, tt.season).Cell(tt.param)
		if cell.Value != tt.want || cell.Rule != tt.rule || cell.Basis != Published {
			t.Errorf("%s %s %s: %q by %q (%s), want %q by %q, published (%s)",
				tt.code, tt.season, tt.param, cell.Value, cell.Rule, cell.Basis, tt.want, tt.rule, tt.source)
		}
	}
}

// Cells that the research itself calls weak stay marked.
func TestWeakCellsKeepTheirDoubt(t *testing.T) {
	tests := []struct {
		code  Code
		param Param
	}{
		{International, "block.beyond-simultaneous"}, // edition of the deletion, and language versions differ
		{International, "serve.screen-definition"},   // either or both visible
		{International, "align.serving-team"},        // language versions swap the teams
		{International, "align.front-back-pair"},     // edition of 'level' inferred
		{International, "align.same-row"},            // edition of 'every other player' inferred
		{Club, "serve.clock-seconds"},                // 2025-27 club book not seen, here and below
		{Club, "serve.toss-dropped-or-caught"},
		{Club, "align.serving-team"},
		{Club, "serve.hands-above-head"},
		{Club, "hits.second-double"},
		{Club, "ball.pursuit"},
		{Club, "block.beyond-simultaneous"},
		{Club, "subs.per-set"},
		{Collegiate, "centre.foot"}, // recommended for 2026, approval not seen
		{Collegiate, "match.court-change-deciding"},
		{Scholastic, "joust.extended"},
		{Scholastic, "hits.teammates-simultaneous"},
		{Scholastic, "serve.attack-of-serve"},
		{Scholastic, "overhead.low-object"},
		{Scholastic, "backrow.block-attempt"},
		{Scholastic, "backrow.attack-completed"},
		{Scholastic, "serve.wrong-server-points"},
	}
	for _, tt := range tests {
		if cell := open(t, tt.code, 0).Cell(tt.param); cell.Doubt == "" {
			t.Errorf("%s %s: has lost its doubt: %+v", tt.code, tt.param, cell)
		}
	}
	for _, id := range []string{"four-contacts", "point", "ball-out", "begin-serve", "replay"} {
		if s, _ := open(t, Scholastic, 0).Signal(id); s.Number != "" || s.Doubt == "" {
			t.Errorf("signal %s: numbers without a source stay out: %+v", id, s)
		}
	}
}

// The numbers of diagram 11 of the FIVB Official Volleyball Rules 2025-2028,
// and of slides on the US high-school signals, c. 2017-18.
func TestSignalNumbers(t *testing.T) {
	tests := []struct {
		code Code
		id   string
		want string
	}{
		{International, "caught", "16"},
		{International, "four-contacts", "18"},
		{International, "line", "22"},
		{Club, "replay", "23"},
		{Collegiate, "caught", ""},
		{Scholastic, "caught", "3"},
		{Scholastic, "position", "1"},
		{Scholastic, "net", "6"},
		{Scholastic, "over-net", "5"},
		{Scholastic, "delay", "21"},
	}
	for _, tt := range tests {
		if s, _ := open(t, tt.code, 0).Signal(tt.id); s.Number != tt.want {
			t.Errorf("%s %s: number %q, want %q", tt.code, tt.id, s.Number, tt.want)
		}
	}
}
