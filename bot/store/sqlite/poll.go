package sqlite

import (
	"time"

	"example.org/netpost/bot/store"
)

var errPollClosed = &store.Error{Code: store.Closed, What: "this play is closed", Mend: "its ruling is shown where it was posted"}

// OpenPoll is part of [store.PollWriter].
func (t *tx) OpenPoll(p store.Poll) error {
	if err := valid("a poll", check{!p.At.IsZero(), "a time"}, check{p.Season != "", "a season"},
		check{p.Closed.IsZero() && p.Votes == 0, "to be new"}, people(p.By)); err != nil {
		return err
	}
	_, err := t.exec(`INSERT INTO polls (association, question, by, season, at, closes) VALUES (?1, ?2, ?3, ?4, ?5, ?6)`,
		p.Question, person(p.By), p.Season, micros(p.At), micros(p.Closes))
	return err
}

const selectPolls = `SELECT question, by, season, at, closes, closed,
	(SELECT count(*) FROM votes WHERE votes.association = ?1 AND votes.question = polls.question) +
	(SELECT coalesce(sum(members), 0) FROM vote_counts WHERE vote_counts.association = ?1 AND vote_counts.question = polls.question)
	FROM polls WHERE association = ?1 `

func poll(s scan) (p store.Poll, err error) {
	err = s(&p.Question, who{&p.By}, &p.Season, when{&p.At}, when{&p.Closes}, when{&p.Closed}, &p.Votes)
	return p, err
}

// Poll is part of [store.PollReader].
func (t *tx) Poll(question string) (store.Poll, error) {
	return one(t, errMissing("poll", question), poll, selectPolls+`AND question = ?2`, question)
}

// Polls is part of [store.PollReader].
func (t *tx) Polls() ([]store.Poll, error) {
	return list(t, poll, selectPolls+`AND closed = 0 ORDER BY at, question`)
}

// Vote is part of [store.PollWriter].
func (t *tx) Vote(v store.Vote) error {
	if err := valid("a vote", check{v.Call != "", "a call"}, check{!v.By.IsZero(), "somebody"}, check{!v.At.IsZero(), "a time"}, people(v.By)); err != nil {
		return err
	}
	p, err := t.Poll(v.Question)
	if err != nil {
		return err
	}
	if !p.Closed.IsZero() {
		return errPollClosed
	}
	_, err = t.exec(`INSERT INTO votes (association, question, by, call, team, at) VALUES (?1, ?2, ?3, ?4, ?5, ?6)
		ON CONFLICT DO UPDATE SET call = excluded.call, team = excluded.team, at = excluded.at`,
		v.Question, person(v.By), v.Call, v.Team, micros(v.At))
	return err
}

// Counts is part of [store.PollReader].
func (t *tx) Counts(question string) ([]store.VoteCount, error) {
	if _, err := t.Poll(question); err != nil {
		return nil, err
	}
	return list(t, func(s scan) (c store.VoteCount, err error) {
		err = s(&c.Call, &c.Team, &c.Members)
		return c, err
	}, `SELECT call, team, count(*) FROM votes WHERE association = ?1 AND question = ?2 GROUP BY 1, 2
		UNION ALL SELECT call, team, members FROM vote_counts WHERE association = ?1 AND question = ?2
		ORDER BY 3 DESC, 1, 2`, question)
}

// ClosePoll is part of [store.PollWriter].
func (t *tx) ClosePoll(question string, at time.Time, agrees func(call, team string) bool) error {
	if err := valid("closing a poll", check{!at.IsZero(), "a time"}, check{agrees != nil, "a ruling to agree with"}); err != nil {
		return err
	}
	p, err := t.Poll(question)
	if err != nil {
		return err
	}
	if !p.Closed.IsZero() {
		return errPollClosed
	}
	counts, err := t.Counts(question)
	if err != nil {
		return err
	}
	for _, c := range counts {
		agreed := 0
		if agrees(c.Call, c.Team) {
			agreed = c.Members
		}
		if _, err := t.exec(`INSERT INTO vote_counts (association, question, call, team, members, agreed) VALUES (?1, ?2, ?3, ?4, ?5, ?6)`,
			question, c.Call, c.Team, c.Members, agreed); err != nil {
			return err
		}
	}
	if _, err := t.exec(`DELETE FROM votes WHERE association = ?1 AND question = ?2`, question); err != nil {
		return err
	}
	_, err = t.exec(`UPDATE polls SET closed = ?3 WHERE association = ?1 AND question = ?2`, question, micros(at))
	return err
}

// Agreement is part of [store.PollReader].
func (t *tx) Agreement(atLeast int) ([]store.Agreement, error) {
	return list(t, func(s scan) (a store.Agreement, err error) {
		w := &a.Where
		err = s(&w.Platform, &w.Workspace, &w.Channel, &a.Season, &a.Polls, &a.Votes, &a.Agreed)
		return a, err
	}, `SELECT platform, workspace, channel, season, count(*), sum(members), sum(agreed) FROM
			(SELECT platform, workspace, channel, polls.season AS season,
				coalesce((SELECT sum(members) FROM vote_counts AS c WHERE c.association = ?1 AND c.question = polls.question), 0) AS members,
				coalesce((SELECT sum(agreed) FROM vote_counts AS c WHERE c.association = ?1 AND c.question = polls.question), 0) AS agreed
				FROM polls JOIN questions ON questions.association = ?1 AND questions.id = polls.question
				WHERE polls.association = ?1 AND closed <> 0)
			WHERE members >= ?2
			GROUP BY 1, 2, 3, 4 ORDER BY 4 DESC, 1, 2, 3`, atLeast)
}
