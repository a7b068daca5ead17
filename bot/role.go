package bot

// Role is what somebody may do in an association's channels. Each role may do
// all that the ones before it may.
type Role uint8

// The roles. The zero value may ask.
const (
	Anyone    Role = iota
	Mentor         // answers what the engine can't, and drafts notes
	Publisher      // publishes notes and bulletins
)

// String is the role in words.
func (r Role) String() string {
	switch r {
	case Mentor:
		return "mentor"
	case Publisher:
		return "publisher"
	}
	return "anyone"
}
