package notation

import "example.org/netpost/engine/play"

// Say is the print of any subject: Print for a rally, the sentences of another.
func Say(s play.Subject) string {
	if p, ok := s.(*play.Rally); ok {
		return Print(p)
	}
	out := ""
	for i, l := range SentencesOf(s) {
		if i > 0 {
			out += ", "
		}
		out += l
	}
	return out
}

// SentencesOf is Sentences for any subject.
func SentencesOf(s play.Subject) []string {
	if p, ok := s.(*play.Rally); ok {
		return Sentences(p)
	}
	return s.(play.Spoken).Sentences()
}

// ClauseOf is Clause for any subject.
func ClauseOf(s play.Subject, k play.Key, v play.Value) string {
	if p, ok := s.(*play.Rally); ok {
		return Clause(p, k, v)
	}
	return s.(play.Spoken).Clause(k, v)
}

// QuestionOf is Question for any subject.
func QuestionOf(s play.Subject, k play.Key) string {
	if p, ok := s.(*play.Rally); ok {
		return Question(p, k)
	}
	return s.(play.Spoken).Question(k)
}

// ChoicesOf is Choices for any subject.
func ChoicesOf(s play.Subject, k play.Key) []string {
	if p, ok := s.(*play.Rally); ok {
		return Choices(p, k)
	}
	return s.(play.Spoken).Choices(k)
}
